import { type Capacity, capacityOf, type PanelClass } from './capacity.ts'
import { type ClothColumns, clothColumns } from './cloth-columns.ts'
import type { Contrast, Pile } from './instance.ts'
import { canBeBought, isShared, rolesByQuilt, tooNear } from './limits.ts'
import type { Aim } from './plan.ts'
import { type Programme, ProgrammeBuilder, type Term } from './programme.ts'
import { classesInOne } from './totals.ts'

/** What is to be made small: a constant and terms. */
export interface Objective {
  readonly constant: number
  readonly terms: readonly Term[]
}

/** Columns that say what one garment gives. */
export interface GarmentColumns {
  readonly capacity: Capacity
  readonly classes: readonly PanelClass[]
  /** Pieces of a size for a role. */
  readonly gives: readonly { readonly size: number; readonly role: number; readonly at: number }[]
  /** For each class of panels a column for each pattern; null where there is only one pattern. */
  readonly cuts: readonly (readonly number[] | null)[]
  /** 1 where the garment gives anything; null where nobody needs to know. */
  readonly used: number | null
  /** For each quilt, 1 only where it gives to it; empty where nobody needs to know. */
  readonly inQuilt: readonly { readonly roles: readonly number[]; readonly at: number }[]
  /** 1 where it plays the role; only for roles where somebody needs to know. */
  readonly plays: ReadonlyMap<number, number>
}

export interface ThresholdColumns {
  readonly dark: number
  readonly levels: readonly { readonly L: number; readonly at: number }[]
}

/** A pile as a programme in whole numbers, and where its columns stand. */
export interface Model {
  readonly programme: Programme
  readonly objectives: Readonly<Record<Aim, Objective>>
  readonly garments: readonly GarmentColumns[]
  readonly cloth: readonly ClothColumns[]
  /** Pieces that neither garments nor bought cloth can give. */
  readonly lacking: readonly { readonly size: number; readonly role: number; readonly at: number }[]
  /** For each contrast, the columns that say its threshold lies at a lightness or above. */
  readonly thresholds: readonly ThresholdColumns[]
  readonly most: number
  /** False where some ways of cutting bought cloth were left out: the best plan may be missed. */
  readonly complete: boolean
}

const wantedOf = ({ demand }: Pile): { size: number; role: number; count: number }[] =>
  demand.flatMap((row, size) =>
    row.flatMap((count, role) => (count > 0 ? [{ size, role, count }] : [])),
  )

const ones = (columns: readonly number[], factor = 1): Term[] =>
  columns.map((column) => [column, factor])

function garmentColumns(b: ProgrammeBuilder, pile: Pile, g: number): GarmentColumns {
  const garment = pile.garments[g]!
  const capacity = capacityOf(pile, garment)
  const { roles, ofSize, forRole, total } = capacity
  const classes = classesInOne(capacity)
  const gives = wantedOf(pile).flatMap(({ size, role, count }) => {
    const most = Math.min(count, ofSize[size]!, forRole[role]!)
    return most > 0 ? [{ size, role, most, at: b.column(0, most) }] : []
  })
  const inContrast = (role: number) =>
    pile.contrast.some(({ light, dark }) => role === light || role === dark)
  const plays = new Map<number, number>()
  for (const role of roles) {
    if (roles.length > pile.maxRoles || inContrast(role)) plays.set(role, b.column(0, 1))
  }
  const isEven = pile.sharing === 'evenly'
  const isAsked = garment.must || garment.minIfUsed > 1 || isEven
  const used = total > 0 && isAsked ? b.column(0, 1) : null

  for (const role of roles) {
    const own = gives.filter((one) => one.role === role)
    const gate = plays.get(role) ?? used
    const all = ones(own.map(({ at }) => at))
    if (gate === null) {
      b.atMost(forRole[role]!, all)
      continue
    }
    b.atMost(0, [...all, [gate, -forRole[role]!]])
    if (own.length > 1)
      for (const { at, most } of own)
        b.atMost(0, [
          [at, 1],
          [gate, -most],
        ])
    if (used !== null && gate !== used)
      b.atMost(0, [
        [gate, 1],
        [used, -1],
      ])
  }
  if (roles.length > pile.maxRoles) b.atMost(pile.maxRoles, ones([...plays.values()]))
  const everything = ones(gives.map(({ at }) => at))
  if (used !== null) {
    b.atMost(0, [...everything, [used, -total]])
    b.atLeast(0, [...everything, [used, -Math.max(1, garment.minIfUsed)]])
  }
  const cuts = cutColumns(b, pile, classes, gives)
  const inQuilt = total > 0 ? quiltColumns(b, pile, garment.must, gives, used) : []
  return { capacity, classes, gives, used, inQuilt, plays, cuts }
}

/** What a garment gives to each quilt: a must-use one as it is wished for, one that is used evenly at least a piece. */
function quiltColumns(
  b: ProgrammeBuilder,
  pile: Pile,
  must: boolean,
  gives: GarmentColumns['gives'],
  used: number | null,
): GarmentColumns['inQuilt'] {
  if (!isShared(pile)) return []
  const quilts = rolesByQuilt(pile).map((roles) => ({
    roles,
    given: ones(gives.filter(({ role }) => roles.includes(role)).map(({ at }) => at)),
  }))
  if (pile.sharing === 'evenly') {
    for (const { given } of quilts) b.atLeast(0, [...given, [used!, -1]])
    return []
  }
  if (!must) return []
  return quilts.map(({ roles, given }) => {
    const at = b.column(0, 1)
    b.atLeast(0, [...given, [at, -1]])
    return { roles, at }
  })
}

/** Must-use garments that give nothing; where these are shared, once for every quilt that they are not in. */
function unusedOf(pile: Pile, garments: readonly GarmentColumns[]): Objective {
  const musts = garments.filter((_, g) => pile.garments[g]!.must)
  const quilts = isShared(pile) ? rolesByQuilt(pile).length : 1
  const inAll = pile.sharing === 'must-in-all'
  return {
    constant: musts.length * quilts,
    terms: musts.flatMap(({ used, inQuilt }): Term[] => {
      if (inAll)
        return ones(
          inQuilt.map(({ at }) => at),
          -1,
        )
      return used === null ? [] : [[used, -quilts]]
    }),
  }
}

/** No more of a size than the panels give. */
function cutColumns(
  b: ProgrammeBuilder,
  pile: Pile,
  classes: readonly PanelClass[],
  gives: GarmentColumns['gives'],
): (number[] | null)[] {
  const cuts = classes.map(({ mult, patterns }) => {
    if (patterns.length === 1) return null
    const columns = patterns.map(() => b.column(0, mult))
    b.atMost(mult, ones(columns))
    return columns
  })
  for (const size of pile.sizes.keys()) {
    const given = gives.filter((one) => one.size === size).map(({ at }) => at)
    if (given.length === 0) continue
    const fixed = classes.reduce(
      (sum, { mult, patterns }, c) => sum + (cuts[c] ? 0 : mult * patterns[0]![size]!),
      0,
    )
    const chosen = classes.flatMap(({ patterns }, c): Term[] =>
      (cuts[c] ?? []).flatMap((column, n): Term[] =>
        patterns[n]![size]! > 0 ? [[column, -patterns[n]![size]!]] : [],
      ),
    )
    b.atMost(fixed, [...ones(given), ...chosen])
  }
  return cuts
}

/**
 * One threshold of lightness for both roles: column k says that it lies at the k-th dark garment's
 * lightness or above. The dark ones below it may play, and the light ones delta above it.
 */
function contrastRows(
  b: ProgrammeBuilder,
  pile: Pile,
  garments: readonly GarmentColumns[],
  { light, dark, delta }: Contrast,
): ThresholdColumns {
  const playing = (role: number) =>
    garments.flatMap(({ plays }, g) =>
      plays.has(role) ? [{ L: pile.garments[g]!.L, at: plays.get(role)! }] : [],
    )
  const darks = playing(dark)
  const levels = [...new Set(darks.map(({ L }) => L))].sort((one, two) => one - two)
  const reached = levels.map(() => b.column(0, 1))
  for (let k = 1; k < reached.length; k += 1) {
    b.atMost(0, [
      [reached[k]!, 1],
      [reached[k - 1]!, -1],
    ])
  }
  for (const { L, at } of darks)
    b.atMost(0, [
      [at, 1],
      [reached[levels.indexOf(L)]!, -1],
    ])
  for (const { L, at } of playing(light)) {
    const k = levels.findIndex((level) => tooNear(L, level, delta))
    if (k >= 0)
      b.atMost(1, [
        [at, 1],
        [reached[k]!, 1],
      ])
  }
  return { dark, levels: levels.map((L, k) => ({ L, at: reached[k]! })) }
}

/** The whole pile as a programme. Panels need their patterns. */
export function modelOf(pile: Pile): Model {
  const b = new ProgrammeBuilder()
  const garments = pile.garments.map((_, g) => garmentColumns(b, pile, g))
  const thresholds = pile.contrast.map((contrast) => contrastRows(b, pile, garments, contrast))
  const wanted = wantedOf(pile)
  const cloth = [...new Set(wanted.map(({ role }) => role))].map((role) =>
    clothColumns(b, pile, role),
  )
  const lacking: { size: number; role: number; at: number }[] = []
  const gives = garments.flatMap((columns) => columns.gives)
  for (const { size, role, count } of wanted) {
    const given = ones(
      gives.filter((one) => one.size === size && one.role === role).map(({ at }) => at),
    )
    if (given.length > 0) b.atMost(count, given)
    if (canBeBought(pile, size)) {
      const { strips, times } = cloth.find((one) => one.role === role)!
      const bought = strips.patterns.flatMap(({ counts }, n): Term[] =>
        counts[size]! > 0 ? [[times[n]!, counts[size]!]] : [],
      )
      b.atLeast(count, [...given, ...bought])
    } else {
      const at = b.column(0, count)
      lacking.push({ size, role, at })
      b.row(count, count, [...given, [at, 1]])
    }
  }
  const most = b.column(0, Math.max(0, ...garments.map(({ capacity }) => capacity.total)))
  for (const { gives: own } of garments) {
    if (own.length > 0) b.atMost(0, [...ones(own.map(({ at }) => at)), [most, -1]])
  }
  return {
    programme: b,
    garments,
    cloth,
    lacking,
    thresholds,
    most,
    complete: cloth.every(({ strips }) => strips.complete),
    objectives: {
      lacking: { constant: 0, terms: ones(lacking.map(({ at }) => at)) },
      V: unusedOf(pile, garments),
      Q: { constant: 0, terms: ones(cloth.map(({ steps }) => steps)) },
      P: {
        constant: wanted.reduce((sum, { count }) => sum + count, 0),
        terms: ones(
          gives.map(({ at }) => at),
          -1,
        ),
      },
      M: { constant: 0, terms: [[most, 1]] },
    },
  }
}

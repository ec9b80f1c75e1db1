import { labOf, mixed } from '../base/colour.ts'
import { type ColourWord, colourWord, drawnAs, examplesOf } from '../base/colour-words.ts'
import { type Figure, practice } from '../base/figure.ts'
import type { SeenCloth } from '../photo/cloth.ts'
import type { Look } from '../photo/look/looked.ts'
import { difference } from '../quilt/place/colours.ts'
import type { Db, PileRow } from '../store/schema.ts'
import type { Garment } from './pile.ts'
import type { Told } from './told.ts'

/** The colours of a garment's cloth, as it is placed and drawn. Colours are `#rrggbb`. */
export interface ClothColours {
  readonly colour: string | null
  readonly from: 'photo' | 'said' | null
  readonly second: string | null
  /** The photo whose middle shows this cloth, by id; null: none does. */
  readonly photo: string | null
  /** Its lightness L* in CIELAB D65, 0 to 100. */
  readonly value: number | null
}

/** A photo's cloth, by the photo's id. */
export interface Seen {
  readonly id: string
  readonly cloth: SeenCloth
}

/**
 * Where one word for a colour ends is seen by everybody otherwise, and so is the light of a room: a
 * photo's colour may bear a word that some colour of this word is no further from, in CIEDE2000.
 */
const reach = 16

/** So much of a photo's cloth has the colours that are told, or it is not shown as the garment's. */
const mostly = 0.5

export const reachFigures: readonly Figure[] = [
  { figure: "cloth/a photo's colour from a word's, CIEDE2000", value: reach, source: practice },
  { figure: 'cloth/least share of told colours to show a photo', value: mostly, source: practice },
]

const tuple = (colour: { l: number; a: number; b: number }) =>
  [colour.l, colour.a, colour.b] as const

/** Whether a colour, `#rrggbb`, may be what was meant by a word. */
export function mayBe(colour: string, word: ColourWord): boolean {
  const seen = labOf(colour)
  return (
    colourWord(seen) === word ||
    examplesOf(word).some((example) => difference(tuple(seen), tuple(example)) <= reach)
  )
}

const nothing: ClothColours = { colour: null, from: null, second: null, photo: null, value: null }

const lightness = (colour: string): number => labOf(colour).l

function asSaid(words: readonly ColourWord[]): ClothColours {
  const [first, second] = words.map(drawnAs)
  if (!first) return nothing
  const colours = second ? [first, second] : [first]
  return {
    colour: first,
    from: 'said',
    second: second ?? null,
    photo: null,
    value: lightness(mixed(colours.map((colour) => ({ colour, share: 1 })))),
  }
}

/**
 * What is known of a cloth's colours. A photo overrules nothing that was said: the words stay the
 * customer's, and where some are told the photo gives the picture only those of its main colours that
 * may be meant by one of them. Where none may, the shot may be of something else, and what was said is
 * drawn. Where nothing is told, or many colours, the photo's own are taken as they are. A colour that is
 * told and not seen comes second.
 */
export function clothColours(
  { colours: words, manyColours }: Pick<Told, 'colours' | 'manyColours'>,
  seen: Seen | null,
): ClothColours {
  if (!seen) return asSaid(words)
  const { mean, main } = seen.cloth
  const free = words.length === 0 || manyColours
  const taken = free ? main : main.filter(({ colour }) => words.some((word) => mayBe(colour, word)))
  const [first, second] = taken.map(({ colour }) => colour)
  if (!first) return asSaid(words)
  const unseen = words.find((word) => !taken.some(({ colour }) => mayBe(colour, word)))
  const share = taken.reduce((sum, one) => sum + one.share, 0)
  return {
    colour: first,
    from: 'photo',
    second: second ?? (unseen ? drawnAs(unseen) : null),
    photo: share >= mostly ? seen.id : null,
    value: lightness(taken.length === main.length ? mean : mixed(taken)),
  }
}

/**
 * The cloth of photos that are still there, by id; those kept before it was looked at are left out. Where the
 * garment was told from what it lies on, its own colours count; else those of the photo's middle.
 */
async function seenIn(db: Db, pileId: string): Promise<SeenCloths> {
  const rows = await db
    .selectFrom('photo')
    .select(['id', 'cloth', 'look'])
    .where('pile_id', '=', pileId)
    .where('removed_at', 'is', null)
    .where('cloth', 'is not', null)
    .execute()
  const garments = rows.flatMap(({ id, look }) => {
    const cloth = look && clothOfLook(JSON.parse(look) as Look)
    return cloth ? [[id, cloth] as const] : []
  })
  const middles = rows.map(({ id, cloth }) => [id, JSON.parse(cloth!) as SeenCloth] as const)
  return { garments: new Map(garments), middles: new Map(middles) }
}

interface SeenCloths {
  readonly garments: ReadonlyMap<string, SeenCloth>
  readonly middles: ReadonlyMap<string, SeenCloth>
}

/** As many colours as a cloth is drawn with, the largest. */
const mostColours = 3

function clothOfLook({ fitness, colours }: Look): SeenCloth | null {
  if (!fitness.ok || colours.length === 0) return null
  const all = colours.map(({ hex, share }) => ({ colour: hex, share }))
  return { mean: mixed(all), main: all.slice(0, mostColours) }
}

export interface ClothOfGarment extends ClothColours {
  /** Its number. */
  readonly garment: number
}

/**
 * Of each garment, in the same order. The first photo counts on which the garment could be told from what it lies
 * on, else the first whose cloth was looked at.
 */
export async function clothsOf(
  db: Db,
  pile: Pick<PileRow, 'id'>,
  garments: readonly Pick<Garment, 'n' | 'told'>[],
): Promise<ClothOfGarment[]> {
  const asked = garments.some(({ told }) => told.photoIds.length > 0)
  const seen = asked ? await seenIn(db, pile.id) : null
  return garments.map(({ n, told }) => ({
    garment: n,
    ...clothColours(told, seen && seenOf(told.photoIds, seen)),
  }))
}

function seenOf(ids: readonly string[], { garments, middles }: SeenCloths): Seen | null {
  for (const cloths of [garments, middles]) {
    const id = ids.find((one) => cloths.has(one))
    if (id !== undefined) return { id, cloth: cloths.get(id)! }
  }
  return null
}

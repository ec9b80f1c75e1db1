import { z } from 'zod'
import { type Layout, quiltSizes, roles } from '../quilt/layout.ts'

/** So many ways may stand beside the pile as it is. */
export const mostTries = 3
const mostChanges = 12
/** Characters. */
const longest = 400

const number = z
  .string()
  .regex(/^\d{1,6}$/)
  .transform(Number)

const changeSchema = z.discriminatedUnion('change', [
  z.object({ change: z.literal('without'), garment: number }),
  /** A garment that waits, stays at home or was declined is taken. */
  z.object({ change: z.literal('take'), garment: number }),
  /** One more ordinary garment for a role. */
  z.object({ change: z.literal('more'), role: z.enum(roles) }),
  /** A garment plays these roles alone; none are named: any. */
  z.object({ change: z.literal('roles'), garment: number, roles: z.array(z.enum(roles)).max(3) }),
  z.object({ change: z.literal('layout'), layout: z.string().regex(/^[a-z][a-z-]{0,63}$/) }),
  z.object({ change: z.literal('size'), size: z.enum(quiltSizes) }),
])

export type Change = z.infer<typeof changeSchema>

/** The fields behind the name of each change, as an address has them: "roles:3:focal:accent". */
function fieldsOf(part: string): unknown {
  const [change, first, ...rest] = part.split(':')
  const alone = rest.length === 0 ? first : undefined
  switch (change) {
    case 'without':
    case 'take':
      return { change, garment: alone }
    case 'more':
      return { change, role: alone }
    case 'roles':
      return { change, garment: first, roles: rest.filter((role) => role !== 'any') }
    case 'layout':
      return { change, layout: alone }
    case 'size':
      return { change, size: alone }
    default:
      return { change }
  }
}

const trySchema = z
  .string()
  .max(longest)
  .transform((text) => text.split(',').map(fieldsOf))
  .pipe(z.array(changeSchema).min(1).max(mostChanges))

/** What two changes cannot both be; one more garment may come again. */
function subjectOf(change: Change, n: number): string {
  switch (change.change) {
    case 'without':
    case 'take':
      return `garment ${change.garment}`
    case 'roles':
      return `roles ${change.garment}`
    case 'more':
      return `more ${n}`
    default:
      return change.change
  }
}

/** Of two changes of one thing the later counts. */
function settled(changes: readonly Change[]): Change[] {
  const last = new Map(changes.map((change, n) => [subjectOf(change, n), change]))
  return [...last.values()]
}

/** A way to try as an address tells of it: "without:3,layout:plain-squares"; null: it cannot be read. */
export function readTry(text: string): Change[] | null {
  const parsed = trySchema.safeParse(text)
  return parsed.success ? settled(parsed.data) : null
}

function partOf(change: Change): string {
  switch (change.change) {
    case 'without':
    case 'take':
      return `${change.change}:${change.garment}`
    case 'more':
      return `more:${change.role}`
    case 'roles':
      return ['roles', change.garment, ...(change.roles.length > 0 ? change.roles : ['any'])].join(
        ':',
      )
    case 'layout':
      return `layout:${change.layout}`
    case 'size':
      return `size:${change.size}`
  }
}

export const tryText = (changes: readonly Change[]): string => changes.map(partOf).join(',')

/** What a change names that is not there; null: all is there. */
export function unknownIn(
  changes: readonly Change[],
  garments: readonly number[],
  layouts: readonly Pick<Layout, 'id'>[],
): 'garment' | 'layout' | null {
  for (const change of changes) {
    if ('garment' in change && !garments.includes(change.garment)) return 'garment'
    if (change.change === 'layout' && !layouts.some(({ id }) => id === change.layout))
      return 'layout'
  }
  return null
}

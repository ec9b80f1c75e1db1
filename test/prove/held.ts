import { derivedInOrder, fileOf } from '../../src/photo/keep.ts'
import type { Store } from '../../src/store/open.ts'
import type { Acknowledged, What } from './crowd.ts'
import { firstToDecide } from './prepared.ts'

/** What each of a crowd was told is kept. */
export type Told = Readonly<Partial<Record<What, readonly Acknowledged[]>>>

/** Whether a picture is there, by the name of its file. */
export type PictureThere = (file: string) => boolean

export const emptyOf = (told: Told): string[] =>
  Object.entries(told).flatMap(([what, some]) =>
    some.length === 0 ? [`no ${what} were acknowledged`] : [],
  )

/** Where what is kept is not what was told, one after the other. */
function compared(what: What, told: readonly string[], kept: readonly string[]): string[] {
  const lost = told.filter((one) => !kept.includes(one))
  const doubled = kept.filter((one, at) => kept.indexOf(one) !== at)
  const strange = kept.filter((one) => !told.includes(one))
  const found = [
    ...lost.map((one) => `${what}: lost ${one}`),
    ...doubled.map((one) => `${what}: doubled ${one}`),
    ...strange.map((one) => `${what}: kept and never told ${one}`),
  ]
  if (found.length === 0 && told.join() !== kept.join()) return [`${what}: in another order`]
  return found
}

const line = ({ key, value }: Acknowledged): string => `${key} ${value}`

/** Where what is kept is not what was told: a line for each thing, `<what>: lost …` or `<what>: doubled …` among them. */
export async function differences(
  store: Store,
  told: Told,
  isThere: PictureThere,
): Promise<string[]> {
  const { db } = store
  const acts = await db.selectFrom('act').selectAll().orderBy('pile_id').orderBy('seq').execute()
  const standing = await db
    .selectFrom('standing')
    .innerJoin('pile', 'pile.id', 'standing.pile_id')
    .select(['standing.pile_id', 'standing.seq', 'pile.seq as last'])
    .execute()
  const given = acts
    .filter(({ idem }) => idem.startsWith('siege-'))
    .map(({ pile_id, idem, act }) => {
      const { question, reply } = JSON.parse(act) as {
        question: string
        reply: { given: string | readonly string[] }
      }
      return { pile: pile_id, key: idem, question, given: reply.given }
    })
  const answers = given.flatMap(({ key, question, given: value }) =>
    question === 'not_to_cut' ? [line({ key, value: String(value) })] : [],
  )
  const shown = given.filter(({ question }) => question === 'photos')
  const pictures = shown.map(({ key, given: ids }) => line({ key, value: String(ids.length) }))
  const moves = await db
    .selectFrom('custody_move')
    .select(['idem', 'place'])
    .where('idem', 'like', 'siege-%')
    .orderBy('seq')
    .execute()
  const decisions = await db
    .selectFrom('decision')
    .innerJoin('pile', 'pile.id', 'decision.pile_id')
    .select(['pile.number', 'decision.verdict'])
    .where('pile.number', '>=', firstToDecide)
    .orderBy('pile.number')
    .execute()
  const messages = await db
    .selectFrom('message')
    .select(['idem', 'text'])
    .where('idem', 'like', 'siege-%')
    .orderBy('at')
    .execute()
  const kept: Readonly<Record<What, readonly string[]>> = {
    answers,
    photos: pictures,
    decisions: decisions.map(({ number, verdict }) =>
      line({ key: String(number), value: verdict }),
    ),
    moves: moves.map(({ idem, place }) => line({ key: idem, value: place ?? '' })),
    messages: messages.map(({ idem, text }) => line({ key: idem, value: text })),
  }
  return [
    ...(Object.keys(kept) as What[]).flatMap((what) =>
      compared(what, (told[what] ?? []).map(line), kept[what]),
    ),
    ...gapsIn(acts, standing),
    ...(told.photos && shown.length > 0 ? await missingPhotos(store, shown, isThere) : []),
  ]
}

interface ActKept {
  readonly pile_id: string
  readonly seq: number
  readonly act: string
}

/**
 * Acts of a pile are numbered from 1 without a gap, its row names the last, and what stands was made from the last
 * but for acts on one garment that is being told of.
 */
function gapsIn(
  acts: readonly ActKept[],
  standing: readonly { readonly pile_id: string; readonly seq: number; readonly last: number }[],
): string[] {
  return standing.flatMap(({ pile_id: pile, seq: stands, last }) => {
    const some = acts.filter(({ pile_id }) => pile_id === pile)
    const gap = some.some(({ seq }, at) => seq !== at + 1)
    const since = some.slice(stands).map(({ act }) => (JSON.parse(act) as { item?: number }).item)
    const within = since.every((item) => item !== undefined && item > 0 && item === since[0])
    return [
      ...(gap ? [`acts of ${pile} have a gap`] : []),
      ...(last === some.length ? [] : [`${pile} names act ${last} of ${some.length}`]),
      ...(stands <= some.length && within
        ? []
        : [`${pile} stands at ${stands} of ${some.length} acts`]),
    ]
  })
}

/** An answer of the photographer's, by the ids of its photos. */
interface Shown {
  readonly pile: string
  readonly given: string | readonly string[]
}

/**
 * Each photo that an answer held is a row with its files; of the photographer's pile the last answer's one is there,
 * and no draft is left. Others bring photos of their own.
 */
async function missingPhotos(
  { db }: Store,
  shown: readonly Shown[],
  isThere: PictureThere,
): Promise<string[]> {
  const ids = shown.flatMap(({ given }) => given)
  const rows = await db
    .selectFrom('photo')
    .selectAll()
    .where('question', '=', 'photos')
    .where('pile_id', 'in', [...new Set(shown.map(({ pile }) => pile))])
    .execute()
  const byId = new Map(rows.map((row) => [row.id, row]))
  const faults = ids.flatMap((id) => {
    const row = byId.get(id)
    if (!row) return [`photos: the row of ${id} is lost`]
    const lost = derivedInOrder.filter((one) => !isThere(fileOf(row.hash, one)))
    return lost.map((one) => `photos: ${one} of ${id} is lost`)
  })
  const there = rows.filter(({ removed_at }) => removed_at === null)
  const [last] = there
  if (there.length !== 1 || last!.id !== ids.at(-1) || last!.kept !== 1) {
    const told = there.map(({ id, kept }) => `${id} (${kept === 1 ? 'kept' : 'draft'})`)
    faults.push(`photos: ${ids.at(-1)} should be there alone: ${told.join(', ')}`)
  }
  return faults
}

import { type ColourWord, colourWord } from '../base/colour-words.ts'
import type { Fault, Look, PrintClass } from '../photo/look/looked.ts'
import type { Db, PhotoSide } from '../store/schema.ts'
import { type SheetMark, sheetMarksOf } from './sheet-marks.ts'

/** What a photo showed, with the photo's id. */
export interface SeenPhoto {
  readonly photo: string
  readonly look: Look
  /** What it was told to show; absent or null: nobody told. */
  readonly shows?: PhotoSide | null
  /** The sheet that a person marked on it: `look` is measured by that one. Absent or null: nobody marked any. */
  readonly sheet?: SheetMark | null
  /** The sheet that was found by itself, whatever was marked since; absent or null: none was. */
  readonly found?: Look['scale']
}

/** As sure must a look be of a print to propose it. */
const surely = 0.7
/** A colour of less of the garment is not proposed: beside one picture, only what may be cloth. */
const leastShare = { picture: 0.3, else: 0.1 } as const
/** Of more colours than these no word is told. */
const mostWords = 3

/** What photos of a pile show, by id, those that nobody looked at left out. */
export async function looksOf(
  db: Db,
  pileId: string,
  ids: readonly string[],
): Promise<SeenPhoto[]> {
  if (ids.length === 0) return []
  const rows = await db
    .selectFrom('photo')
    .select(['id', 'look', 'shows'])
    .where('pile_id', '=', pileId)
    .where('id', 'in', ids)
    .where('removed_at', 'is', null)
    .where('look', 'is not', null)
    .execute()
  const looks = new Map(rows.map((row) => [row.id, row]))
  const sheets = await sheetMarksOf(db, pileId, [...looks.keys()])
  return ids.flatMap((photo) => {
    const row = looks.get(photo)
    if (!row) return []
    const look = lookIn(row.look!)
    const sheet = sheets.get(photo) ?? null
    const measured = sheet ? { ...look, ...sheet.sizes } : look
    return [{ photo, look: measured, shows: row.shows, sheet, found: look.scale }]
  })
}

/** A look as its row holds it; those of older rows were not measured. */
const lookIn = (row: string): Look => ({
  scale: null,
  size: null,
  ...(JSON.parse(row) as Omit<Look, 'scale' | 'size'> & Partial<Look>),
})

/** A close look at a spot tells nothing of the garment as a whole. */
const ofTheWhole = ({ shows }: SeenPhoto): boolean => shows !== 'close-up'

/**
 * Of a garment's photos, in their order, the one that tells of it: the first fit one of its front, else the first
 * that is fit; but one that surely shows a single picture first, which may be on the back. Null where none is fit.
 */
export function tellingLook(seen: readonly SeenPhoto[]): SeenPhoto | null {
  const fit = seen.filter((one) => one.look.fitness.ok && ofTheWhole(one))
  const pictured = fit.find(({ look }) => printSeen(look) === 'single' && look.graphic)
  return pictured ?? fit.find(({ shows }) => shows === 'front') ?? fit[0] ?? null
}

/** The print that a look is sure of; null: of none. */
export const printSeen = ({ print }: Look): PrintClass | null =>
  print.confidence >= surely ? print.class : null

/** The words for the colours of a garment's cloth as an answer holds them; none where there are none. */
export function coloursSeen(look: Look): readonly (ColourWord | 'many-colours')[] {
  const least = leastShare[printSeen(look) === 'single' ? 'picture' : 'else']
  const words = new Set(
    look.colours
      .filter(({ share }) => share >= least)
      .map(({ lab: [l, a, b] }) => colourWord({ mode: 'lab65', l, a, b })),
  )
  return words.size > mostWords ? ['many-colours'] : [...words]
}

/** Looking has learnt from nothing of their shape, and takes them for no garment however well they lie. */
const neverSeen: readonly string[] = ['blanket', 'tie', 'scarf', 'apron', 'other']

/**
 * What keeps all photos of a garment of that kind from telling of it; a close look at a worn spot beside a good one is
 * none. Nobody is asked to lay out anew what would not be seen that way either.
 */
export function faultsSeen(seen: readonly SeenPhoto[], kind?: string): readonly Fault[] {
  if (seen.some(({ look }) => look.fitness.ok)) return []
  const found = seen.filter(ofTheWhole).flatMap(({ look }) => look.fitness.problems)
  const isToBeSeen = kind === undefined || !neverSeen.includes(kind)
  return [...new Set(found)].filter((fault) => isToBeSeen || fault !== 'no-garment')
}

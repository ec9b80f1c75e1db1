import { inchWords } from '../../base/units.ts'
import { coloursSeen, printSeen, type SeenPhoto } from '../../intake/garment-look.ts'
import { pictureSizeSeen } from '../../intake/garment-size.ts'
import type { Garment } from '../../intake/pile.ts'
import { nameOf, photoLinks, type Reader } from './present-garment.ts'
import { listWords } from './present-swatch.ts'
import type { LookShown } from './view-question.ts'

/** The questions that a photo of the garment proposes an answer to. */
export type ProposedBy = 'pattern' | 'colours' | 'graphic_size'

export const isProposed = (question: string): question is ProposedBy =>
  question === 'pattern' || question === 'colours' || question === 'graphic_size'

/** Inches, to the nearest half: the photo tells no more. */
const halves = (inches: number): number => Math.round(inches * 2) / 2

/** What an answer would be by the photo; none where the photo does not tell surely. */
export function proposedValues(question: ProposedBy, { look }: SeenPhoto): readonly string[] {
  if (question === 'colours') return coloursSeen(look)
  if (question === 'graphic_size') {
    const size = pictureSizeSeen(look)
    const longer = size ? halves(Math.max(size.across, size.along)) : 0
    return longer >= 1 ? [inchWords(longer)] : []
  }
  const print = printSeen(look)
  return print ? [print] : []
}

/** The photo with what was seen on it, beside a question that it proposes an answer to. */
export function lookShown(
  question: ProposedBy,
  seen: SeenPhoto,
  garment: Garment,
  reader: Reader,
): LookShown | null {
  const values = proposedValues(question, seen)
  if (values.length === 0) return null
  const { say } = reader.language
  const [link] = photoLinks([seen.photo], garment, reader)
  const single = question === 'graphic_size' || values[0] === 'single'
  return {
    photo: { ...link!, alt: say('look.alt', { name: nameOf(garment, reader) }) },
    box: single ? seen.look.graphic : null,
    sentence:
      question === 'colours' ? coloursSaid(values, reader) : printSaid(question, seen, reader),
  }
}

function coloursSaid(words: readonly string[], { language }: Reader): string {
  const { say, locale } = language
  const colours = words.map((word) =>
    say(`intake.colours.options.${word}`).toLocaleLowerCase(locale),
  )
  return say('look.colours', { colours: listWords(colours, language) })
}

/** The print, and how large one picture is where a sheet beside the garment tells that. */
function printSaid(
  question: 'pattern' | 'graphic_size',
  { look }: SeenPhoto,
  { language: { say } }: Reader,
): string {
  const print = printSeen(look)
  const size = print === 'single' || question === 'graphic_size' ? pictureSizeSeen(look) : null
  const sized = size && {
    w: inchWords(halves(size.across)),
    h: inchWords(halves(size.along)),
  }
  if (question === 'graphic_size') return say('look.size', sized ?? {})
  return sized ? say('look.single_sized', sized) : say(`look.print.${print}`)
}

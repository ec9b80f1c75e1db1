import { inchWords } from '../../base/units.ts'
import { coloursSeen, printSeen, type SeenPhoto } from '../../intake/garment-look.ts'
import { garmentSizeSeen, pictureSizeSeen, type SeenSize } from '../../intake/garment-size.ts'
import type { Garment } from '../../intake/pile.ts'
import type { Language } from '../../words/words.ts'
import { paths } from './paths.ts'
import { nameOf, photoLinks, type Reader } from './present-garment.ts'
import { garmentSizeWords, outlineSeen, sheetWords, sizeGaps } from './present-sheet.ts'
import { listWords } from './present-swatch.ts'
import type { LookShown, MeasureOffer } from './view-question.ts'

/** The questions that a photo of the garment proposes an answer to. */
export type ProposedBy = 'pattern' | 'colours' | 'graphic_size'

export const isProposed = (question: string): question is ProposedBy =>
  question === 'pattern' || question === 'colours' || question === 'graphic_size'

/** Inches, to the nearest half: the photo tells no more. */
const halves = (inches: number): number => Math.round(inches * 2) / 2

/** What an answer would be by the photo; none where the photo does not tell surely. */
export function proposedValues(question: ProposedBy, seen: SeenPhoto): readonly string[] {
  const { look } = seen
  if (question === 'colours') return coloursSeen(look)
  if (question === 'graphic_size') {
    const size = pictureSizeSeen(seen)
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
  const sized = single ? pictureSizeSeen(seen) : question === 'pattern' && garmentSizeSeen(seen)
  return {
    photo: { ...link!, alt: say('look.alt', { name: nameOf(garment, reader) }) },
    box: single ? seen.look.graphic : null,
    sheet: sized ? outlineSeen(seen) : null,
    filled: question === 'graphic_size',
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
  seen: SeenPhoto,
  { language: { say } }: Reader,
): string {
  const print = printSeen(seen.look)
  const size = print === 'single' || question === 'graphic_size' ? pictureSizeSeen(seen) : null
  if (!size) return say(`look.print.${print}`)
  const gaps = sizeGaps(size, (inches) => inchWords(halves(inches)))
  const by = say(seen.sheet ? 'look.by_marks' : 'look.by_sheet', {
    sheet: sheetWords(seen.look.scale!.by, say),
  })
  return [say(question === 'graphic_size' ? 'look.size' : 'look.single_sized', gaps), by].join(' ')
}

/**
 * The way to mark a sheet of paper on the photo that tells of the garment, which is fit: beside its print to tell how
 * large the garment is, and where the size of its one picture is asked. Null there if no picture was seen to measure.
 */
export function measureOffer(
  question: string,
  seen: SeenPhoto,
  garment: Garment,
  reader: Reader,
): MeasureOffer | null {
  const { key, language } = reader
  if (!garment.told.photoIds.includes(seen.photo)) return null
  const picture = pictureSizeSeen(seen)
  const href = paths.sheet(key, seen.photo, question)
  if (question === 'graphic_size')
    return seen.look.graphic ? offered('picture', seen, picture, { href, language }) : null
  if (question !== 'pattern') return null
  if (printSeen(seen.look) === 'single' && picture)
    return offered('picture', seen, picture, { href, language })
  return offered('garment', seen, garmentSizeSeen(seen), { href, language })
}

function offered(
  of: 'garment' | 'picture',
  { look: { scale } }: SeenPhoto,
  size: SeenSize | null,
  { href, language: { say } }: { href: string; language: Language },
): MeasureOffer {
  const told = size ? 'wrong' : scale ? 'unclear' : 'missing'
  const sentence = say(`sheet.offer.${of}.${told}`)
  return {
    // How large its picture is stands beside the photo.
    sentence: size && of === 'garment' ? `${garmentSizeWords(size, say)} ${sentence}` : sentence,
    label: say(told === 'missing' ? 'sheet.offer.mark' : 'sheet.offer.move'),
    href,
  }
}

import { coloursSeen, printSeen, type SeenPhoto } from '../../intake/garment-look.ts'
import type { Garment } from '../../intake/pile.ts'
import { nameOf, photoLinks, type Reader } from './present-garment.ts'
import { listWords } from './present-swatch.ts'
import type { LookShown } from './view-question.ts'

/** The questions that a photo of the garment proposes an answer to. */
export type ProposedBy = 'pattern' | 'colours'

export const isProposed = (question: string): question is ProposedBy =>
  question === 'pattern' || question === 'colours'

/** What an answer would be by the photo; none where the photo does not tell surely. */
export function proposedValues(question: ProposedBy, { look }: SeenPhoto): readonly string[] {
  if (question === 'colours') return coloursSeen(look)
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
  const { language } = reader
  const { say } = language
  const [link] = photoLinks([seen.photo], garment, reader)
  return {
    photo: { ...link!, alt: say('look.alt', { name: nameOf(garment, reader) }) },
    box: question === 'pattern' && values[0] === 'single' ? seen.look.graphic : null,
    sentence:
      question === 'pattern'
        ? say(`look.print.${values[0]}`)
        : say('look.colours', {
            colours: listWords(
              values.map((word) =>
                say(`intake.colours.options.${word}`).toLocaleLowerCase(language.locale),
              ),
              language,
            ),
          }),
  }
}

import { coloursSeen, printSeen, type SeenPhoto } from '../../intake/garment-look.ts'
import { garmentSizeSeen } from '../../intake/garment-size.ts'
import type { Garment } from '../../intake/pile.ts'
import { chosen } from '../../intake/replies.ts'
import type { Language } from '../../words/words.ts'
import { listWords } from '../chat/present-swatch.ts'
import type { PhotoShows } from './view.ts'

/** What a photo showed by itself, and whether the customer says otherwise of the print. */
export function showsOf(seen: SeenPhoto, { replies }: Garment, language: Language): PhotoShows {
  const { look } = seen
  const { say, locale } = language
  const option = (question: string, value: string): string =>
    say(`intake.${question}.options.${value}`)
  if (!look.fitness.ok) {
    const faults = look.fitness.problems.map((fault) => say(`desk.shows.faults.${fault}`))
    return {
      sentence: say('desk.shows.unfit', { faults: listWords(faults, language) }),
      otherwise: null,
    }
  }
  const print = printSeen(look)
  const colours = coloursSeen(look).map((word) => option('colours', word).toLocaleLowerCase(locale))
  const said = chosen(replies, 'pattern')
  const what = [
    print ? option('pattern', print) : say('desk.shows.unclear'),
    listWords(colours, language),
    sizeOf(seen, language),
  ]
  return {
    sentence: say('desk.shows.fit', { what: what.filter(Boolean).join(' · ') }),
    otherwise:
      print && said && said !== print
        ? say('desk.shows.otherwise', { said: option('pattern', said) })
        : null,
  }
}

/** How large the garment lies there and how far that may be off, where a sheet beside it tells; else nothing. */
function sizeOf(seen: SeenPhoto, { say }: Language): string {
  const size = garmentSizeSeen(seen)
  if (!size) return ''
  const [w, h] = [size.across, size.along].map((inches) => Math.round(inches))
  return say('desk.shows.size', { w: w!, h: h!, error: Math.ceil(size.errorPct) })
}

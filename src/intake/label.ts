import type { Replies } from '../flow/grammar.ts'
import type { Facts } from '../garment/facts.ts'
import { ironFact } from '../textile/heat.ts'
import { readLabel } from '../textile/label.ts'
import type { LabelReading } from '../textile/reading.ts'
import { chosen, labelValue, ticked } from './replies.ts'

// The same words are read again each time a pile is followed; a reading depends on its words alone.
const readings = new Map<string, LabelReading>()
const mostReadings = 5_000

/** What the words of a label say. */
export function readingOfWords(words: string): LabelReading {
  const known = readings.get(words)
  if (known) return known
  if (readings.size >= mostReadings) readings.clear()
  const reading = readLabel(words)
  readings.set(words, reading)
  return reading
}

/** What was read from the label's typed words; null where none were typed. */
export function readingOf(replies: Replies): LabelReading | null {
  const label = labelValue(replies)
  return label?.found === 'words' && label.words !== '' ? readingOfWords(label.words) : null
}

/** True where the reading may count as a fact: it is sure, or the customer has confirmed it. */
export const readingStands = (replies: Replies, reading: LabelReading): boolean =>
  reading.sure || chosen(replies, 'label_check') === 'yes'

type Iron = Facts['iron']

// From the coldest: where two sources differ the colder one holds.
const coldestFirst: readonly Iron[] = ['none', 'cool', 'warm', 'hot', 'silent', 'missing']
const colder = (a: Iron, b: Iron): Iron =>
  coldestFirst.indexOf(a) <= coldestFirst.indexOf(b) ? a : b

function ironOfSigns(signs: readonly string[]): Iron {
  const picked = signs.find((sign) => sign.startsWith('iron-'))?.slice('iron-'.length)
  return picked === undefined || picked === 'absent' ? 'silent' : (picked as Iron)
}

/** The label's ironing line, from words, from the sign picked beside them, or from picked signs. */
export function ironOf(replies: Replies): Iron {
  const label = labelValue(replies)
  if (!label || label.found === 'none') return 'missing'
  if (label.found === 'signs') return ironOfSigns(ticked(replies, 'signs'))

  const reading = readingOf(replies)
  const worded = reading && readingStands(replies, reading) ? ironFact(reading) : 'silent'
  // An unconfirmed reading may still say "colder"; it may never say "hotter".
  const doubted = reading ? ironFact(reading) : 'silent'
  const said = colder(worded, doubted === 'hot' ? 'silent' : doubted)
  if (label.iron === null || label.iron === 'absent') return said
  return colder(said, label.iron)
}

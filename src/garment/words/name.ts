import type { Line } from './claims.ts'
import type { Subject } from './kinds.ts'
import { between } from './tokens.ts'

/** As long as the question for it allows. */
export const longestName = 60

const leaves =
  /^(a|an|the|my|this|that|these|those|is|it|it's|its|was|are|were|i|i'm|im|have|has|had|we|he|she|they|so|and|also|here|here's|heres|there|there's|one|of|in|on|at|to|for|from|with|but|or|hi|hello|hey|please|got|found|need|want|would|like|very|just|still|our|next|first|second|another|bought|gave|wore|loved|kept|be|been|el|la|los|las|un|una|unos|unas|es|era|esta|este|tengo|mi|hay|y|o|con|para|que|de|en|hola|aqui)$/

/** What to call the garment: "dad's blue flannel", "camisa azul de papá"; empty: the line tells no more than its kind. */
export function nameOf(
  line: Line,
  { kind, named, several }: Subject,
  {
    isOpen,
    joinsColours,
  }: { isOpen: (at: number) => boolean; joinsColours: (at: number) => boolean },
): { name: string; first: number; last: number } | null {
  if (!kind || several || !isOpen(kind.first)) return null
  const { tokens, helps, raw, language } = line
  let first = kind.first
  const goesOn = (at: number): boolean =>
    joinsColours(at) || (tokens[at]!.segment === tokens[at + 1]!.segment && !stops(line, at))
  while (first > 0 && goesOn(first - 1)) first -= 1
  while (first < kind.first && leaves.test(tokens[first]!.word)) first += 1
  let last = named.find(({ first: at }) => at === kind.first)?.last ?? kind.last
  if (language === 'es') last = spanishEnd(line, last, joinsColours)
  // A kind of one word, "T-shirt" too, names nothing.
  const isOneWord = !/\s/.test(between(raw, tokens, kind.first, kind.last))
  const hasMore = first < kind.first || last > kind.last || !isOneWord
  if (!hasMore || tokens.slice(first, last + 1).some((_, nth) => helps.negates[first + nth]))
    return null
  const name = between(raw, tokens, first, last)
  if (name.length > longestName || /\n/.test(name)) return null
  return { name, first, last }
}

const stops = ({ tokens, helps }: Line, at: number): boolean => {
  const { word, isMark, text } = tokens[at]!
  if (isMark) return !/^[-'’/&]$/.test(text)
  if (/^(my|the|a|an|mi|la|el)$/.test(word)) return false
  return (
    leaves.test(word) ||
    helps.hedges[at] === true ||
    helps.sizeMarks[at] === true ||
    /^\d/.test(word)
  )
}

/** The colour, cloth or pattern that follows, and whose it is: "de mi abuelo". */
function spanishEnd(
  { tokens, helps }: Line,
  from: number,
  joinsColours: (at: number) => boolean,
): number {
  const { segment } = tokens[from]!
  let best = from
  for (let at = from + 1; at <= from + 8; at += 1) {
    const token = tokens[at]
    if (!token || token.segment !== segment || token.isMark) break
    const joins =
      joinsColours(at) || /^(de|del|mi|su|la|el|a|mis|nuestro|nuestra)$/.test(token.word)
    if (
      (!joinsColours(at) && token.word === 'y') ||
      /^(talla|con|que|tiene|es|era|muy|sin|para|en|esta|talle|por|pero)$/.test(token.word) ||
      helps.sizeMarks[at] ||
      helps.negates[at]
    )
      break
    if (!joins) best = at
    if (helps.people[at] && !joins) break
  }
  return best
}

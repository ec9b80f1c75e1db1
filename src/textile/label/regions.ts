import { fold } from './clean.ts'
import type { Element } from './elements.ts'
import { careWords } from './vocabulary.ts'

/** A stretch of the label that speaks of the same parts of the garment. */
export interface Region {
  /** Empty where no part is named. */
  readonly sections: readonly string[]
  readonly elements: readonly Element[]
  /** A word stands like the name of a part, but is not known. */
  readonly unclear: boolean
}

/** Cuts the label at the names of parts. A name counts where a share stands beside it. */
export function regionsOf(elements: readonly Element[]): Region[] {
  const headers = headersIn(elements)
  if (headers.length === 0) return [{ sections: [], elements, unclear: false }]
  return namesFollow(elements, headers)
    ? byTrailers(elements, headers)
    : byHeaders(elements, headers)
}

interface Header {
  readonly from: number
  readonly to: number
  readonly sections: readonly string[]
}

/** Names of parts that stand together are one header: "shell / extérieur", "body and sleeves". */
function headersIn(elements: readonly Element[]): Header[] {
  const headers: Header[] = []
  for (const [at, element] of elements.entries()) {
    if (element.kind !== 'section' || isExcepted(elements, at)) continue
    if (everyday.has(fold(element.raw)) && !standsApart(elements, at)) continue
    const last = headers.at(-1)
    const together = last && elements.slice(last.to + 1, at).every(joinsNames)
    if (last && together)
      headers[headers.length - 1] = {
        from: last.from,
        to: at,
        sections: wholeOf([...new Set([...last.sections, ...element.sections])]),
      }
    else headers.push({ from: at, to: at, sections: [...element.sections] })
  }
  return headers.filter((header) => shareNear(elements, header))
}

/** Front and back together are the garment itself. */
function wholeOf(sections: readonly string[]): readonly string[] {
  if (!sections.includes('front') || !sections.includes('back')) return sections
  return ['body', ...sections.filter((name) => !['front', 'back', 'body'].includes(name))]
}

// Names of parts that are small words in another language, or in the same one.
const everyday = new Set([
  'for',
  'pas',
  'bas',
  'dos',
  'col',
  'alt',
  'ic',
  'on',
  'dis',
  'top',
  'back',
  'front',
  'inside',
  'face',
  'self',
  'base',
  'main',
  'body',
])

/** At the start of a line or phrase, or between two shares. */
function standsApart(elements: readonly Element[], at: number): boolean {
  const joined = elements[at - 1]?.kind === 'filler' && elements[at - 2]?.kind === 'section'
  const before = joined ? elements[at - 2] : elements[at - 1]
  if (!before || before.kind === 'line' || before.kind === 'mark' || before.kind === 'section')
    return true
  return before.kind === 'fibre' || (before.kind === 'number' && before.percent)
}

const isExcepted = (elements: readonly Element[], at: number): boolean =>
  elements.slice(Math.max(0, at - 3), at).some(({ kind }) => kind === 'excluded')

const joinsNames = ({ kind, raw }: Element): boolean =>
  kind === 'filler' || kind === 'line' || (kind === 'mark' && raw !== '.') || kind === 'or'

const isShare = (element: Element | undefined): boolean =>
  element?.kind === 'number' || element?.kind === 'fibre' || element?.kind === 'pure'

function shareNear(elements: readonly Element[], header: Header): boolean {
  return shareAfter(elements, header.to) || isShareBefore(elements, header.from)
}

const reach = 6

function shareAfter(elements: readonly Element[], at: number): boolean {
  let words = 0
  for (let next = at + 1; next <= at + reach + 4; next++) {
    const element = elements[next]
    if (!element) return false
    if (isShare(element)) return true
    if (element.kind === 'mark' && /[.;]/.test(element.raw)) return false
    if (element.kind === 'word' && (++words > 1 || isCareWord(element.raw))) return false
  }
  return false
}

/** "Front printed ⏎ 100 % cotton": an unread word behind the name may make it a remark. */
function saysMore(elements: readonly Element[], at: number): boolean {
  const [next, line] = [elements[at + 1], elements[at + 2]]
  return next?.kind === 'word' && line?.kind === 'line'
}

const isCareWord = (word: string): boolean => careWords().single(fold(word)) !== undefined

function isShareBefore(elements: readonly Element[], at: number): boolean {
  for (let before = at - 1; before >= at - 3; before--) {
    const element = elements[before]
    if (!element || element.kind === 'line') return false
    if (isShare(element)) return true
    if (element.kind === 'word' || (element.kind === 'mark' && !/[(®™]/.test(element.raw)))
      return false
  }
  return false
}

/** "100 % cotton (shell), 100 % polyester (lining)": each name stands after its shares. */
function namesFollow(elements: readonly Element[], headers: readonly Header[]): boolean {
  const firstShare = elements.findIndex(({ kind }) => kind === 'number')
  return (
    firstShare < headers[0]!.from &&
    !elements.slice(headers.at(-1)!.to + 1).some(({ kind }) => kind === 'number') &&
    headers.every(({ from }) => isShareBefore(elements, from))
  )
}

function byTrailers(elements: readonly Element[], headers: readonly Header[]): Region[] {
  let from = 0
  const regions = headers.map((header) => {
    const region = {
      sections: header.sections,
      elements: elements.slice(from, header.from),
      unclear: false,
    }
    from = header.to + 1
    return region
  })
  return regions
}

/** A first name right behind a share may belong to that share: "100 % cotton lining 100 % silk". */
function byHeaders(elements: readonly Element[], headers: readonly Header[]): Region[] {
  const used = headers.filter(({ to }) => shareAfter(elements, to))
  const before = elements.slice(0, used[0]?.from ?? elements.length)
  const regions: Region[] = [{ sections: [], elements: before, unclear: false }]
  for (const [i, header] of used.entries()) {
    const end = used[i + 1]?.from ?? elements.length
    const unclear =
      (i === 0 && isShareBefore(elements, header.from)) || saysMore(elements, header.to)
    regions.push({
      sections: header.sections,
      elements: elements.slice(header.to + 1, end),
      unclear,
    })
  }
  return regions
}

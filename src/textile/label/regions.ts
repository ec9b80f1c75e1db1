import { fold } from './clean.ts'
import type { Element } from './elements.ts'
import { isUnread } from './unread.ts'
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
  if (headers.length === 0) return [{ sections: [], elements, unclear: losesName(elements, false) }]
  const regions = namesFollow(elements, headers)
    ? byTrailers(elements, headers)
    : byHeaders(elements, headers)
  return regions.map((region) => ({
    ...region,
    unclear: region.unclear || losesName(region.elements, true),
  }))
}

/** "Lining:" without its shares; or, where other parts are named, "Bqdy:" above shares. */
const losesName = (elements: readonly Element[], othersNamed: boolean): boolean =>
  elements.some((element, at) => {
    const isHead = elements[at + 1]?.raw === ':' && elements[at + 2]?.kind === 'line'
    if (!isHead || (at > 0 && elements[at - 1]!.kind !== 'line')) return false
    return (
      element.kind === 'section' || (othersNamed && isUnread(element) && shareAfter(elements, at))
    )
  })

interface Header {
  readonly from: number
  readonly to: number
  readonly sections: readonly string[]
  readonly unclear: boolean
}

/** Names of parts that stand together are one header: "shell / extérieur", "body and sleeves". */
function headersIn(elements: readonly Element[]): Header[] {
  const headers: Header[] = []
  for (const [at, element] of elements.entries()) {
    if (element.kind !== 'section' || isExcepted(elements, at)) continue
    if (everyday.has(fold(element.raw)) && !standsApart(elements, at)) continue
    if (isSize(elements, at)) continue
    const last = headers.at(-1)
    const together = last && elements.slice(last.to + 1, at).every(joinsNames)
    if (last && together)
      headers[headers.length - 1] = joinedHeader(last, element.sections, at, elements)
    else {
      const unclear = element.guessed === true
      headers.push({ from: at, to: at, sections: [...element.sections], unclear })
    }
  }
  return headers.filter((header) => shareNear(elements, header))
}

/** "Taille 38/40", "waist 32" beside shares with their sign: a size, and no part. */
function isSize(elements: readonly Element[], at: number): boolean {
  const next = elements[at + 1]
  if (next?.kind !== 'number' || next.percent || next.value < leastSize) return false
  return elements.some((element) => element.kind === 'number' && element.percent)
}

/** Smaller numbers count the parts: "shell 2". */
const leastSize = 10

/** "Lining of the pocket" names one part; names on two lines may be the heads of two columns. */
function joinedHeader(
  last: Header,
  sections: readonly string[],
  to: number,
  elements: readonly Element[],
): Header {
  const between = elements.slice(last.to + 1, to)
  const both = [...new Set([...last.sections, ...sections])]
  const differ = both.length > Math.max(last.sections.length, sections.length)
  const bound = between.every(({ kind, raw }) => kind === 'filler' && !lists.has(fold(raw)))
  if (differ && bound) {
    const inner = both.filter((name) => name !== 'lining')
    return {
      from: last.from,
      to,
      sections: both.length > inner.length ? inner : both,
      unclear: last.unclear || both.length === inner.length || inner.includes('body'),
    }
  }
  const lined = differ && between.some(({ kind }) => kind === 'line')
  return { from: last.from, to, sections: wholeOf(both), unclear: last.unclear || lined }
}

/** "Body and sleeves": the small words that count parts up. */
const lists: ReadonlySet<string> = new Set(
  'and with plus et avec y con und mit e com en met i z och med og si cu a s ve ile 和 与 及 と 及び 와 과 및'.split(
    ' ',
  ),
)

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

/** "Excluding the lining": but what a new sentence begins with is a name again. */
function isExcepted(elements: readonly Element[], at: number): boolean {
  for (let before = at - 1; before >= Math.max(0, at - 3); before--) {
    const { kind, raw } = elements[before]!
    if (kind === 'excluded') return true
    if (kind === 'mark' && /[.;:]/.test(raw)) return false
  }
  return false
}

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
    headers.every(({ from, to }) => isShareBefore(elements, from) && endsThere(elements[to + 1]))
  )
}

/** "裏側から低温で": where words run on, the name is one of theirs. */
const endsThere = (next: Element | undefined): boolean =>
  next?.kind !== 'word' && next?.kind !== 'filler'

function byTrailers(elements: readonly Element[], headers: readonly Header[]): Region[] {
  let from = 0
  const regions = headers.map((header) => {
    const region = {
      sections: header.sections,
      elements: elements.slice(from, header.from),
      unclear: header.unclear,
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
      header.unclear ||
      (i === 0 && isShareBefore(elements, header.from)) ||
      saysMore(elements, header.to)
    regions.push({
      sections: header.sections,
      elements: elements.slice(header.to + 1, end),
      unclear,
    })
  }
  return regions
}

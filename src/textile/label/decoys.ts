import type { Element } from './elements.ts'

/** "20 % off", "shrinkage up to 5 %": such numbers are no shares. */
export function dropDecoys(elements: readonly Element[]): Element[] {
  const dropped = new Set<Element>(changes(elements))
  for (const [at, element] of elements.entries()) {
    if (element.kind === 'decoyBefore')
      decoyNear(elements, at, standsBehind(elements, at) ? -1 : 1, dropped)
    if (element.kind === 'decoyAfter') decoyNear(elements, at, -1, dropped)
    if (element.kind === 'likeness') for (const told of likened(elements, at)) dropped.add(told)
  }
  return elements.filter((element) => !dropped.has(element))
}

function decoyNear(
  elements: readonly Element[],
  at: number,
  step: 1 | -1,
  dropped: Set<Element>,
): void {
  const reach = step === 1 ? 4 : 2
  for (let steps = 1; steps <= reach; steps++) {
    const element = elements[at + step * steps]
    if (!element || element.kind === 'fibre' || element.kind === 'section') return
    if (element.kind === 'line' && (step === -1 || endsLine(elements, at, steps))) return
    if (element.kind !== 'number') continue
    if (step === 1 || !hasName(elements, at - steps)) dropped.add(element)
    return
  }
}

/** "20 % discount ⏎ 100 % linen": a word that may stand on either side has its number right before. */
const standsBehind = (elements: readonly Element[], at: number): boolean => {
  const [before, next] = [elements[at - 1], elements[at + 1]]
  return before?.kind === 'number' && (next === undefined || next.kind !== 'number')
}

/** "Cotton 100 % original": the name in front has no other number, so that this one is its share. */
function hasName(elements: readonly Element[], at: number): boolean {
  let before = at - 1
  while (isPassing(elements[before])) before--
  if (elements[before]?.kind !== 'fibre') return false
  while (elements[before]?.kind === 'fibre' || isPassing(elements[before])) before--
  return elements[before]?.kind !== 'number'
}

const isPassing = (element: Element | undefined): boolean =>
  element?.kind === 'filler' ||
  element?.kind === 'detail' ||
  (element?.kind === 'mark' && /^[-:(]$/.test(element.raw))

/** "-30 %", "±3 %", "+2 %" are changes where other percentages have no sign in front. */
function changes(elements: readonly Element[]): Element[] {
  const percents = elements.flatMap((element, at) =>
    element.kind === 'number' && element.percent ? [{ element, sign: signAt(elements, at) }] : [],
  )
  const minus = percents.every(({ sign }) => sign === '-')
  return percents.flatMap(({ element, sign }) => (sign && !(minus && sign === '-') ? element : []))
}

function signAt(elements: readonly Element[], at: number): string | null {
  const [sign, before] = [elements[at - 1], elements[at - 2]]
  if (sign?.kind !== 'mark' || !/^[-−‐+±~]$/.test(sign.raw)) return null
  // "95 % cotton + 5 % elastane" adds up.
  if (sign.raw === '+' && before?.kind === 'fibre') return null
  if (sign.raw !== '-' && sign.raw !== '−' && sign.raw !== '‐') return sign.raw
  const opens = before === undefined || before.kind === 'line' || before.kind === 'mark'
  return opens || before.kind === 'decoyBefore' ? '-' : null
}

/** The word has its number in front of it on its line, or other words follow it there. */
function endsLine(elements: readonly Element[], at: number, steps: number): boolean {
  if (elements.slice(at + 1, at + steps).some(({ kind }) => kind === 'word')) return true
  const line = elements.slice(0, at).findLastIndex(({ kind }) => kind === 'line')
  return elements.slice(line + 1, at).some((one) => one.kind === 'number' && one.percent)
}

/** "Feels like 100 % cotton. 100 % polyester": what another sentence tells is the make-up. */
function likened(elements: readonly Element[], at: number): readonly Element[] {
  const behind = elements.slice(at + 1)
  const end = behind.findIndex(
    ({ kind, raw }) => kind === 'line' || (kind === 'mark' && raw === '.'),
  )
  const clause = end < 0 ? behind : behind.slice(0, end)
  const others = [...elements.slice(0, at), ...behind.slice(clause.length)]
  const isPercent = (element: Element) => element.kind === 'number' && element.percent
  if (!clause.some(isPercent) || !others.some(isPercent)) return []
  return clause.filter(({ kind }) => kind === 'number' || kind === 'fibre')
}

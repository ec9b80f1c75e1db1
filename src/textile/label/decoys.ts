import type { Element } from './elements.ts'

/** "20 % off", "shrinkage up to 5 %": such numbers are no shares. */
export function dropDecoys(elements: readonly Element[]): Element[] {
  const dropped = new Set<Element>()
  for (const [at, element] of elements.entries()) {
    if (element.kind === 'decoyBefore') decoyNear(elements, at, 1, dropped)
    if (element.kind === 'decoyAfter') decoyNear(elements, at, -1, dropped)
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
    if (element.kind === 'line' && step === -1) return
    if (element.kind !== 'number') continue
    dropped.add(element)
    return
  }
}

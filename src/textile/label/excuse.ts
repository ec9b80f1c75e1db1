import type { Element } from './elements.ts'
import { isPair, type Told } from './pairing.ts'
import type { Repeat } from './repeats.ts'

/** So many repetitions without an unread word tell a make-up, whatever else stands in the others. */
const enough = 2

/**
 * Whether what could not be read stands in repetitions alone that are not needed: those with a slip, or
 * any where enough others are without one.
 */
export function areRepeated(
  unread: readonly Element[],
  elements: readonly Element[],
  agreeing: readonly (readonly Repeat[])[],
): boolean {
  if (unread.length === 0) return true
  const repeatOf = new Map<Element, Repeat>()
  for (const repeat of agreeing.flat())
    for (const element of repeat.told.flatMap(elementsOf)) repeatOf.set(element, repeat)
  const beside = unread.map((element) => besides(elements, elements.indexOf(element), repeatOf))
  const touched = new Set(beside.filter((near) => !near.some(isFlawed)).flat())
  return beside.every((near) => {
    if (near.some(isFlawed)) return true
    return near.some((repeat) =>
      agreeing.some(
        (all) =>
          all.includes(repeat) &&
          all.filter((one) => one.of === repeat.of && !isFlawed(one) && !touched.has(one)).length >=
            enough,
      ),
    )
  })
}

const isFlawed = ({ flaws }: Repeat): boolean => flaws > 0

const elementsOf = (told: Told): readonly Element[] => {
  if (isPair(told)) return [told.share, told.fibre]
  return 'name' in told ? [told.share] : [told]
}

/** The repetitions that tell something right before and right behind. */
function besides(
  elements: readonly Element[],
  at: number,
  repeatOf: ReadonlyMap<Element, Repeat>,
): Repeat[] {
  const before = elements.slice(0, at).findLast((element) => isTelling(element, repeatOf))
  const behind = elements.slice(at + 1).find((element) => isTelling(element, repeatOf))
  return [before, behind].flatMap((element) => (element && repeatOf.get(element)) ?? [])
}

const isTelling = (element: Element, repeatOf: ReadonlyMap<Element, Repeat>): boolean =>
  repeatOf.has(element) || element.kind === 'fibre' || element.kind === 'section'

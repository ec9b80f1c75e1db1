import { type FibreKey, fibreOf } from '../fibres.ts'
import type { Element, FibreElement } from './elements.ts'

/** Polyamide with its number: "nylon 6", "polyamide 6.6". */
export function nylonTypes(elements: readonly Element[]): Element[] {
  const read: Element[] = []
  const anyPercent = elements.some((element) => element.kind === 'number' && element.percent)
  for (const element of elements) {
    const fibre =
      read.at(-1)?.kind === 'mark' && read.at(-1)!.raw === '-' ? read.at(-2) : read.at(-1)
    const type =
      element.kind === 'number' &&
      !element.percent &&
      anyPercent &&
      fibre?.kind === 'fibre' &&
      fibre.fibre === 'polyamide'
        ? nylonType(element.value)
        : null
    if (!type) {
      read.push(element)
      continue
    }
    read[read.indexOf(fibre!)] = { ...(fibre as FibreElement), fibre: type }
  }
  return read
}

function nylonType(value: number): FibreKey | null {
  if (value === 6) return fibreOf('nylon6').key
  return value === 66 || value === 6.6 ? fibreOf('nylon66').key : null
}

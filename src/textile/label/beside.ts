import { has, type Item } from './items.ts'

// Words that are a fibre in one language and an everyday word in another.
export const everyday = new Set([
  'in',
  'la',
  'down',
  'metal',
  'glass',
  'hair',
  'andra',
  'andre',
  'alte',
  'altre',
  'otras',
  'outras',
  'other',
  'inne',
  'jina',
  'diger',
  'overige',
  'sonstige',
  'broom',
  'beaver',
  'paper',
  'soy',
  'milk',
  'pele',
  'piel',
  'cam',
  'glas',
  'yak',
  'tuy',
  'others',
  'nylons',
])

export const isLine = (item: Item | undefined): boolean => item?.kind === 'line'

export const isPercent = (item: Item | undefined): boolean =>
  item?.kind === 'percent' || has(item, 'percent')

const programmeWords = new Set([
  'setting',
  'settings',
  'cycle',
  'programme',
  'program',
  'wash',
  'detergent',
  'mode',
  'press',
  'waschgang',
  'like',
  'soap',
])

/** "Wool cycle", "cotton setting" speak of a machine. */
export const isProgramme = (items: readonly Item[], at: number): boolean =>
  programmeWords.has(items[at + 1]?.text ?? '')

export const passable = (item: Item | undefined): boolean =>
  item !== undefined &&
  (item.kind === 'line' ||
    (item.kind === 'mark' && /[-:/.,()®™*]/.test(item.raw)) ||
    isPercent(item) ||
    has(item, 'details') ||
    has(item, 'fillers'))

/** True where only small words and marks stand between the item and a percentage. */
export function besideShare(
  items: readonly Item[],
  at: number,
  percents: ReadonlySet<number>,
  bareToo: boolean,
  passes: (item: Item | undefined) => boolean = passable,
): boolean {
  for (const step of [-1, 1]) {
    let next = at + step
    for (let steps = 0; steps < 5 && passes(items[next]); steps++) next += step
    const item = items[next]
    if (item?.kind !== 'number') continue
    if (percents.has(next) || (bareToo && isShareLike(item.value))) return true
  }
  return false
}

const isShareLike = (value: number): boolean => value > 0 && value <= 100

export function fibreFollows(items: readonly Item[], at: number): boolean {
  let next = at + 1
  while (isLine(items[next]) || has(items[next], 'details')) next++
  return has(items[next], 'fibre') && !everyday.has(items[next]!.text)
}

import { implied } from '../../src/garment/derive.ts'
import { domains, type Facts, type Recipient, type Size } from '../../src/garment/facts.ts'
import { panelsOf } from '../../src/garment/panels.ts'
import { readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { type Knowledge, learn } from '../../src/intake/knowledge.ts'
import type { BenchGarment } from '../../src/papers/teardown-sheet.ts'
import type { Language } from '../../src/words/words.ts'
import { plainShirt } from './garments.ts'

/** What an ordinary garment of a kind is like beside what its kind implies. Invented. */
const ordinary: Readonly<Partial<Record<Facts['kind'], Partial<Facts>>>> = {
  tshirt: { printMake: 'screen', pattern: 'single', graphic: 'fits' },
  jersey: { printMake: 'sublimated', stretch: 'little', heat: 'warm', wash: 'softener' },
  sweatshirt: { printMake: 'film', pattern: 'single', graphic: 'fits' },
  hoodie: { iron: 'silent' },
  jumper: { surface: 'loose-knit', heat: 'warm', weight: 'heavy', wash: 'unwashed' },
  blouse: { surface: 'woven', stretch: 'none', heat: 'cool', iron: 'cool' },
  jeans: { wear: 'thin' },
  skirt: { iron: 'missing' },
  dress: { surface: 'knit', stretch: 'much', heat: 'warm' },
  blanket: { surface: 'pile', heat: 'warm', weight: 'heavy', oneWay: 'yes' },
  tie: { heat: 'unknown', iron: 'missing', wash: 'never' },
  scarf: { weight: 'fine', heat: 'warm', age: 'old' },
  uniform: { consent: 'part' },
  swimwear: { heat: 'cool', iron: 'none' },
  coat: { weight: 'padded', heat: 'warm', surface: 'woven' },
  other: { surface: 'unknown', weight: 'unknown', heat: 'unknown' },
}

const flows = new URL('../../flows', import.meta.url).pathname
let known: Knowledge | null = null
export const shopKnowledge = (): Knowledge =>
  (known ??= learn(readFlowsFolder(flows), '2026-06-01'))

/** A child's things go to a child; the rest to the grown. */
export const recipientOf = (kind: Facts['kind']): Recipient =>
  kind === 'baby-suit' ? 'under3' : kind === 'pyjamas' ? 'child' : 'adult'

/** These carry no size on their label. */
const unsized: readonly Facts['kind'][] = ['blanket', 'tie', 'scarf', 'apron', 'other']

const sizeOf = (kind: Facts['kind']): Exclude<Size, 'unknown'> =>
  kind === 'baby-suit' ? '6-12m' : kind === 'pyjamas' ? '5T' : 'M'

/** An ordinary garment of a kind as it lies on the bench, with `told` known of it besides. */
export function benchGarment(
  kind: Facts['kind'],
  { say }: Language,
  told: Partial<Facts> = {},
): BenchGarment {
  const facts: Facts = {
    ...plainShirt,
    pattern: 'solid',
    printMake: 'none',
    trims: 'none',
    ...implied(kind),
    ...ordinary[kind],
    ...told,
    kind,
  }
  const words = say(`intake.kind.options.${kind}`)
  return {
    code: `K7-${domains.kind.indexOf(kind) + 1}`,
    name: words,
    kind: words,
    size: unsized.includes(kind) ? null : sizeOf(kind),
    facts,
    panels: panelsOf(kind, sizeOf(kind), facts),
    grading: shopKnowledge().grade(facts, { recipient: recipientOf(kind) }),
  }
}

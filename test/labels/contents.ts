import type { FibreKey } from '../../src/textile/fibres.ts'
import type { IronLevel } from '../../src/textile/reading.ts'
import type { Chance } from '../help/chance.ts'
import { footOf, headOf } from './around.ts'
import { drawBlocks, nameOf, partName } from './make-up.ts'
import { type DrawnLanguage, phrases } from './phrases.ts'
import {
  drawSetting,
  glyphs,
  inLetters,
  type Layout,
  onLines,
  type Printed,
  type Setting,
} from './setting.ts'
import { cyrillic, latinAndGreek, type Stranger, strangersFibres } from './strangers.ts'
import type { Kind, TrueBlock, Truth } from './truth.ts'
import { wrap } from './wrap.ts'

/** What stands on a label, line by line, and what that says. */
export interface Contents extends Pick<Truth, 'kind' | 'languages' | 'blocks' | 'iron' | 'text'> {
  readonly layout: Layout
  readonly columns: readonly (readonly Printed[])[]
  readonly traits: Truth['traits']
}

const latin = [
  'en',
  'fr',
  'es',
  'de',
  'it',
  'pt',
  'nl',
  'pl',
  'sv',
  'da',
  'ro',
  'cs',
  'tr',
] as const

const levels = { none: 26, cool: 26, warm: 26, hot: 22 } satisfies Record<IronLevel, number>

export function drawContents(chance: Chance, kind: Kind): Contents {
  const layout = drawLayout(chance, kind)
  const languages = drawLanguages(chance, kind, layout)
  const among = drawStrangers(chance, kind, layout)
  const onlyStrangers = kind === 'cyrillic' && chance.happens(0.2)
  // No table here has the strangers' words for parts.
  const blocks = drawBlocks(
    chance,
    languages,
    among.length > 0 ? { fibres: strangersFibres, parts: false } : {},
  )
  const spoken = onlyStrangers ? [] : languages
  const iron = spoken.length > 0 && chance.happens(0.72) ? chance.weighed(levels) : null
  const set = drawSetting(chance, kind, layout)

  const makeUps =
    layout === 'slashed'
      ? [slashed(chance, set, languages, blocks)]
      : spoken.map((language) => makeUpIn(chance, set, language, blocks))
  makeUps.push(...among.map((stranger) => makeUpOf(chance, set, stranger, blocks)))
  const cared = chance.happens(0.5) ? spoken : spoken.slice(0, 2)
  const cares = cared.map((language) => careIn(chance, set, language, iron))
  cares.push(...among.map(({ care }) => onLines(set, care.join('. '))))

  const drawn = chance.happens(0.6) ? (iron ?? chance.weighed(levels)) : null
  const pictures = drawn ? [pictured(chance, drawn)] : []
  const head = headOf(chance, layout)
  const foot = footOf(chance, set, [...spoken], among)
  const gap: Printed = { is: 'gap' }
  const apart = (groups: readonly Printed[][]): Printed[] =>
    groups.flatMap((group, at) => (at > 0 && chance.happens(0.4) ? [gap, ...group] : group))
  const columns =
    layout === 'columns'
      ? [
          [...head, ...apart(makeUps)],
          [...pictures, ...apart(cares), gap, ...foot],
        ]
      : [[...head, ...apart(makeUps), gap, ...pictures, ...apart(cares), gap, ...foot]]

  return {
    kind,
    layout,
    languages: spoken,
    blocks,
    iron,
    columns,
    text: textOf(columns),
    traits: {
      layout,
      letters: set.letters,
      form: set.form,
      between: set.between.trim() || 'space',
      width: set.width,
      languages: spoken.length,
      strangers: among.map(({ mark }) => mark).join(' ') || null,
      ironPicture: drawn,
      parts: blocks.length,
    },
  }
}

const drawLayout = (chance: Chance, kind: Kind): Layout =>
  kind === 'main'
    ? chance.weighed({ strip: 36, single: 26, loop: 14, columns: 12, slashed: 12 })
    : kind === 'cyrillic'
      ? 'strip'
      : chance.weighed({ single: 60, loop: 30, strip: 10 })

function drawLanguages(chance: Chance, kind: Kind, layout: Layout): DrawnLanguage[] {
  if (kind === 'cjk') return chance.happens(0.4) ? ['ja', 'en'] : ['ja']
  const count = {
    strip: kind === 'main' ? chance.whole(3, 7) : chance.whole(1, 3),
    single: 1,
    loop: chance.whole(1, 2),
    columns: chance.whole(1, 3),
    slashed: chance.whole(2, 4),
  }[layout]
  // Half of the labels speak English, and Spanish next to it.
  const first: DrawnLanguage[] = chance.happens(0.55) ? ['en'] : chance.happens(0.35) ? ['es'] : []
  const others = latin.filter((code) => !first.includes(code))
  return [...first, ...chance.some(others, count - first.length)].slice(0, count)
}

function drawStrangers(chance: Chance, kind: Kind, layout: Layout): Stranger[] {
  if (kind === 'cyrillic') return chance.some(cyrillic, chance.whole(1, 2))
  const may = kind === 'main' && layout === 'strip' && chance.happens(0.25)
  return may ? chance.some(latinAndGreek, 1) : []
}

type Namer = (fibre: FibreKey) => string

function sharesOf(set: Setting, block: TrueBlock, name: Namer, language?: string): Printed[] {
  const shares = block.fibres.map(({ fibre, percent }) => ({
    name: inLetters(name(fibre), set, language),
    percent: `${percent}${set.sign}`,
  }))
  if (set.form === 'table') return shares.map((share) => ({ is: 'row', ...share }))
  const said = shares.map(({ name, percent }) =>
    set.form === 'share-first' ? `${percent} ${name}` : `${name} ${percent}`,
  )
  const runs = set.between === 'line' ? said : [said.join(set.between)]
  return runs.flatMap((run) =>
    wrap(run, set.width, set.hyphens).map((text): Printed => ({ is: 'share', text })),
  )
}

function marked(set: Setting, mark: string, lines: Printed[]): Printed[] {
  const first = lines[0]
  if (set.marks === 'none') return lines
  if (set.marks === 'line' || first?.is !== 'share') return [{ is: 'text', text: mark }, ...lines]
  const text = `${mark}${set.marks === 'colon' ? ':' : ''} ${first.text}`
  return [{ ...first, text }, ...lines.slice(1)]
}

function makeUpIn(
  chance: Chance,
  set: Setting,
  language: DrawnLanguage,
  blocks: readonly TrueBlock[],
): Printed[] {
  const name: Namer = (fibre) => nameOf(fibre, language, chance)
  const lines = blocks.flatMap((block): Printed[] => {
    const shares = sharesOf(set, block, name, language)
    if (block.section === null) return shares
    const part = inLetters(partName(block.section, language, chance), set, language)
    return [{ is: 'text', text: `${part}:` }, ...shares]
  })
  return marked(set, chance.one(phrases[language].marks), lines)
}

const makeUpOf = (
  chance: Chance,
  set: Setting,
  { mark, fibres, madeIn }: Stranger,
  blocks: readonly TrueBlock[],
): Printed[] => {
  const lines = blocks.flatMap((block) => sharesOf(set, block, (fibre) => fibres[fibre]!))
  const made = chance.happens(0.5) ? onLines(set, madeIn) : []
  return [...marked(set, mark, lines), ...made]
}

/** Every share once, with its names in all languages: "60% COTTON/COTON/BAUMWOLLE". */
function slashed(
  chance: Chance,
  set: Setting,
  languages: readonly DrawnLanguage[],
  blocks: readonly TrueBlock[],
): Printed[] {
  const joint = chance.one(['/', '/', ' / '])
  const all = (name: (language: DrawnLanguage) => string) =>
    [...new Set(languages.map((one) => inLetters(name(one), set, one)))].join(joint)
  const named = { ...set, between: 'line' } as const
  return blocks.flatMap((block): Printed[] => {
    const shares = sharesOf(named, block, (fibre) => all((one) => nameOf(fibre, one, chance)))
    const { section } = block
    if (section === null) return shares
    const part = all((one) => partName(section, one, chance))
    return [...onLines(set, `${part}:`), ...shares]
  })
}

function careIn(
  chance: Chance,
  set: Setting,
  language: DrawnLanguage,
  iron: IronLevel | null,
): Printed[] {
  const words = phrases[language]
  const lines = [
    chance.one(words.wash),
    ...(chance.happens(0.7) ? [chance.one(words.bleach)] : []),
    ...(chance.happens(0.6) ? [chance.one(words.dry)] : []),
  ]
  const at = chance.happens(0.8) ? lines.length : 1
  if (iron) lines.splice(at, 0, chance.one(words.iron[iron]))
  const runs = chance.happens(0.6) ? lines : [lines.map((line) => `${line}.`).join(' ')]
  return runs.flatMap((run) => onLines(set, run, language))
}

function pictured(chance: Chance, level: IronLevel): Printed {
  const dots = { none: 0, cool: 1, warm: 2, hot: 3 }[level]
  return {
    is: 'glyphs',
    glyphs: glyphs.map((glyph) => ({
      glyph,
      crossed: glyph === 'iron' ? level === 'none' : glyph !== 'tub' && chance.happens(0.45),
      dots: glyph === 'iron' ? dots : 0,
    })),
  }
}

/** The line of a share that something lies on: in the middle of the first make-up. */
export function coveredLine({ columns, blocks }: Contents): Printed | undefined {
  const shares = columns.flat().filter(({ is }) => is === 'share' || is === 'row')
  return shares[Math.min(shares.length - 1, Math.floor(blocks[0]!.fibres.length / 2))]
}

/** The lines as somebody reads them: one column after the other. */
const textOf = (columns: Contents['columns']): string =>
  columns
    .flat()
    .flatMap((line) => wordsOf(line) ?? [])
    .join('\n')

/** What a line says; null for what is no words. */
export function wordsOf(line: Printed): string | null {
  if (line.is === 'glyphs' || line.is === 'gap') return null
  return line.is === 'row' ? `${line.name} ${line.percent}` : line.text
}

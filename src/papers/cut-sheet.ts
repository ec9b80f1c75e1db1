import type { PanelToCut } from '../quilt/cut/panel.ts'
import type { Pattern } from '../quilt/cut/patterns.ts'
import type { Language, Say } from '../words/words.ts'
import { type CutDrawing, cutDrawing } from './cut-drawing.ts'
import { type BenchCut, type BenchOrder, benchOrder, type Given, type Side } from './cut-order.ts'
import { sizeParts, sizeWords } from './cut-sizes.ts'

/** A panel and how it is cut: `times` alike. `name` is in the reader's language. */
export interface PanelOnSheet {
  readonly name: string
  readonly panel: PanelToCut
  readonly pattern: Pattern
  readonly times: number
}

/** Pieces that a plan gives to a role of the quilt; w and h in quarter inches, as they lie in the quilt. */
export interface RoleOfPieces {
  readonly w: number
  readonly h: number
  readonly role: string
  readonly count: number
}

export interface CutLine {
  readonly number: number
  readonly words: string
}

export interface PanelCuts extends CutDrawing {
  /** "Front, 2 alike" */
  readonly heading: string
  /** For who cannot see the drawing. */
  readonly alt: { readonly title: string; readonly description: string }
  /** One line for each cut, in order. */
  readonly list: readonly CutLine[]
  readonly notes: readonly string[]
}

export interface PieceCount {
  readonly count: number
  /** "12 of 5 × 5 in: 8 for light, 4 to spare" */
  readonly words: string
}

/** Where a garment's panels are cut: plain data for a page, in the reader's language. */
export interface CutSheet {
  /** The blade's, once, before the first cut. */
  readonly caution: string
  /** What is done before the first cut. */
  readonly before: string
  readonly legend: string
  readonly panels: readonly PanelCuts[]
  readonly pieces: readonly PieceCount[]
}

interface Size {
  readonly w: number
  readonly h: number
}

/** A turned piece counts as the size that was asked for; a block as a piece of its size. */
const sizeOf = ({ pieces, feature }: PanelToCut, k: number): Size =>
  pieces[k] ?? { w: feature!.bw, h: feature!.bh }

/** No line ends within a length: "2" is not to be read for "2 1/2". */
const whole = (length: string): string => length.replaceAll(' ', '\u00a0')

const measure = (size: Size, say: Say): string => {
  const [w, h] = sizeParts(size)
  return whole(say('cut.measure', { w, h }))
}

interface Counted {
  readonly size: Size
  readonly count: number
}

function countedOf(panels: readonly PanelOnSheet[]): Counted[] {
  const counted = new Map<string, Counted>()
  for (const { panel, pattern, times } of panels) {
    for (const { k } of pattern.items) {
      const size = sizeOf(panel, k)
      const key = sizeWords(size)
      counted.set(key, { size, count: (counted.get(key)?.count ?? 0) + times })
    }
  }
  return [...counted.values()].sort((a, b) => b.size.w * b.size.h - a.size.w * a.size.h)
}

const countWords = ({ size, count }: Counted, say: Say): string =>
  say('cut.pieces', { count, size: measure(size, say) })

/** What the cut pieces are for. More given away than is cut is said, never hidden. */
function withRoles(one: Counted, roles: readonly RoleOfPieces[], language: Language): PieceCount {
  const { say, locale } = language
  const { size, count } = one
  const words = countWords(one, say)
  const mine = roles.filter(({ w, h }) => w === size.w && h === size.h)
  if (mine.length === 0) return { count, words }
  const over = count - mine.reduce((sum, role) => sum + role.count, 0)
  const parts = [
    ...mine.map(({ role, count: some }) => say('cut.for_role', { count: some, role })),
    ...(over > 0 ? [say('cut.to_spare', { count: over })] : []),
    ...(over < 0 ? [say('cut.too_few', { count: -over })] : []),
  ]
  const list = new Intl.ListFormat(locale, { type: 'unit' }).format(parts)
  return { count, words: say('cut.shared', { pieces: words, parts: list }) }
}

function givenWords(
  side: Side,
  given: Given,
  { panel, say }: { readonly panel: PanelToCut; readonly say: Say },
): string[] {
  if (given === 'cut-further') return []
  const where = say(`cut.side.${side}`)
  if (given === 'leftover') return [say('cut.left_over', { where })]
  const isBlock = given.k === panel.pieces.length
  return [say(isBlock ? 'cut.is_block' : 'cut.is_piece', { where, size: measure(given, say) })]
}

/** The cut before made over again, as far beyond it: it lies on what that one left below or right. */
const isAgain = ({ way, at, of }: BenchCut, before: BenchCut | undefined): boolean =>
  before !== undefined &&
  of?.cut === before.number &&
  way === before.way &&
  at - before.at === before.at - startOf(before)

const startOf = ({ way, rect }: BenchCut): number => (way === 'V' ? rect[0] : rect[1])

function cutWords(cut: BenchCut, before: BenchCut | undefined, say: Say): string {
  const [length] = sizeParts({ w: cut.at - startOf(cut), h: 0 })
  const at = whole(say('cut.inches', { length }))
  const { of, way } = cut
  if (of && isAgain(cut, before)) return say(`cut.again.${of.side}`, { at, cut: of.cut })
  const part = of ? say(`cut.part.${of.side}`, { cut: of.cut }) : say('cut.whole')
  return say(way === 'V' ? 'cut.down' : 'cut.across', { at, part })
}

function lineOf(
  cut: BenchCut,
  before: BenchCut | undefined,
  { panel, say }: { readonly panel: PanelToCut; readonly say: Say },
): CutLine {
  const sides: readonly [Side, Side] = cut.way === 'V' ? ['left', 'right'] : ['above', 'below']
  const sentences = [
    cutWords(cut, before, say),
    ...sides.flatMap((side, n) => givenWords(side, cut.gives[n]!, { panel, say })),
  ]
  return { number: cut.number, words: sentences.join(' ') }
}

function notesOf({ panel, pattern }: PanelOnSheet, order: BenchOrder, say: Say): string[] {
  const { feature, pieces } = panel
  const turned = pattern.items.some(({ k, w, h }) => {
    const size = pieces[k]
    return size !== undefined && (size.w !== w || size.h !== h)
  })
  const keepsGraphic = pattern.items.some(({ k }) => k === pieces.length)
  return [
    ...(order.cuts.length === 0 && pattern.items.length === 0 ? [say('cut.none')] : []),
    ...(feature && keepsGraphic ? [say('cut.graphic')] : []),
    ...(feature && !keepsGraphic ? [say('cut.graphic_lost')] : []),
    ...(turned ? [say('cut.turned')] : []),
  ]
}

function panelCuts(one: PanelOnSheet, language: Language): PanelCuts {
  const { say, locale } = language
  const { name, panel, pattern, times } = one
  const order = benchOrder(panel, pattern)
  const pieces = countedOf([{ ...one, times: 1 }]).map((size) => countWords(size, say))
  const list = new Intl.ListFormat(locale, { type: 'unit' })
  const words = {
    measure: (w: string, h: string) => say('cut.measure', { w, h }),
    block: say('cut.block'),
    unmarked: say('cut.unmarked'),
  }
  return {
    ...cutDrawing({ panel, pattern, order }, words),
    heading: times > 1 ? say('cut.alike', { name, count: times }) : name,
    alt: {
      title: say('cut.alt', { name }),
      description: say('cut.alt_told', {
        size: measure({ w: panel.W, h: panel.H }, say),
        pieces: pieces.length > 0 ? list.format(pieces) : say('cut.no_pieces'),
        cuts: order.cuts.length,
      }),
    },
    list: order.cuts.map((cut, n) => lineOf(cut, order.cuts[n - 1], { panel, say })),
    notes: notesOf(one, order, say),
  }
}

/**
 * How panels are cut: drawings, lists and what comes of them. Panels that are cut no times are left out.
 * Throws where a pattern is not of its panel.
 */
export function cutSheet({
  panels,
  roles = [],
  language,
}: {
  readonly panels: readonly PanelOnSheet[]
  readonly roles?: readonly RoleOfPieces[]
  readonly language: Language
}): CutSheet {
  const { say } = language
  const cut = panels.filter(({ times }) => times > 0)
  return {
    caution: say('cut.caution', { blade: say('trade.cautions.sharp-blade') }),
    before: say('cut.before'),
    legend: say('cut.legend'),
    panels: cut.map((one) => panelCuts(one, language)),
    pieces: countedOf(cut).map((one) => withRoles(one, roles, language)),
  }
}

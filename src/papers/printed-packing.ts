import type { Language, Say } from '../words/words.ts'
import type { Checklist, Listed } from './checklist.ts'
import type { EstimatePaper } from './estimate-paper.ts'
import type { Block, Printed } from './printed.ts'

/** A confirmed pile's packing list with its estimate, as both were shown. */
export interface PackingPaper {
  readonly pile: string
  readonly confirmedAt: number
  readonly checklist: Checklist
  readonly estimate: EstimatePaper | null
  readonly address: readonly string[]
}

export const dayWords = (at: number, { locale }: Language): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(at)

/** "Page #n of #m": whoever writes the pages puts the numbers in. */
export const pageWords = (say: Say): string => say('printed.page', { n: '#n', of: '#m' })

const h2 = (words: string): Block => ({ block: 'heading', level: 2, words })

function listOf(listed: readonly Listed[], as: 'tick' | 'plain', say: Say): Block {
  return {
    block: 'list',
    as,
    items: listed.map(({ code, name, grade, steps }) => ({
      words: `${code}  ${name}`,
      notes: [say(`grades.${grade}`), ...steps],
    })),
  }
}

const numbered = (steps: readonly string[]): Block => ({
  block: 'list',
  as: 'number',
  items: steps.map((words) => ({ words })),
})

function checklistBlocks({ checklist, address }: PackingPaper, say: Say): Block[] {
  const { packed, waiting, keptHome, packing, cautions, ahead } = checklist
  return [
    ...(packed.length > 0 ? [h2(say('confirmed.pack')), listOf(packed, 'tick', say)] : []),
    ...(waiting.length > 0
      ? [
          h2(say('confirmed.waiting')),
          { block: 'words', words: say('confirmed.waitingHelp') } as const,
          listOf(waiting, 'plain', say),
        ]
      : []),
    ...(keptHome.length > 0
      ? [
          h2(say('confirmed.home')),
          { block: 'words', words: say('confirmed.homeHelp') } as const,
          {
            block: 'list',
            as: 'plain',
            items: keptHome.map(({ name, reason, next }) => ({
              words: name,
              notes: [[reason, next].filter(Boolean).join(' ')],
            })),
          } as const,
        ]
      : []),
    h2(say('confirmed.box')),
    numbered(packing),
    ...cautions.map((words): Block => ({ block: 'caution', words })),
    ...(address.length > 0
      ? [
          { block: 'heading', level: 3, words: say('confirmed.address') } as const,
          ...address.map((words): Block => ({ block: 'words', words, as: 'strong' })),
        ]
      : []),
    h2(say('printed.ahead')),
    numbered(ahead),
  ]
}

/** Every line, and below those of a group what they come to. */
function linesTable(groups: EstimatePaper['groups'], say: Say): Block {
  const rows = groups.flatMap(({ label, amount, lines }) => [
    ...lines.map((line) => [line.label, line.note ?? '', line.amount]),
    [say('printed.sum', { of: label }), '', amount],
  ])
  let last = -1
  return {
    block: 'table',
    head: [say('estimate.what'), '', say('estimate.amount')],
    widths: [0.4, 0.42, 0.18],
    right: [2],
    strong: groups.map(({ lines }) => {
      last += lines.length + 1
      return last
    }),
    rows,
  }
}

/** What it is likely to cost, and what that hangs on; it says itself that it is no promise. */
export function estimateBlocks(estimate: EstimatePaper, say: Say): Block[] {
  const { low, likely, high, quilt, grounds, groups, reasons, terms, how } = estimate
  return [
    h2(say('estimate.title')),
    { block: 'words', words: quilt },
    { block: 'words', words: `${say('estimate.likely')} ${likely}`, as: 'large' },
    ...(low === high
      ? []
      : [{ block: 'words', words: say('estimate.range', { low, high }) } as const]),
    { block: 'words', words: say('estimate.noPromise'), as: 'strong' },
    { block: 'words', words: grounds, as: 'small' },
    ...(groups.length > 0 ? [linesTable(groups, say)] : []),
    ...(reasons.length > 0
      ? [
          { block: 'heading', level: 3, words: say('estimate.hangsOn') } as const,
          { block: 'list', as: 'plain', items: reasons.map((words) => ({ words })) } as const,
        ]
      : []),
    { block: 'rows', rows: terms.map(({ label, text }) => ({ name: label, words: text })) },
    ...(how.length > 0
      ? [
          { block: 'heading', level: 3, words: say('estimate.how') } as const,
          {
            block: 'rows',
            rows: how.map(({ label, sentences }) => ({ name: label, words: sentences.join(' ') })),
          } as const,
        ]
      : []),
  ]
}

const paperOf = (
  paper: PackingPaper,
  title: string,
  blocks: readonly Block[],
  language: Language,
): Printed => ({
  title,
  language: language.code,
  at: paper.confirmedAt,
  head: language.say('confirmed.pile', {
    pile: paper.pile,
    on: dayWords(paper.confirmedAt, language),
  }),
  pages: pageWords(language.say),
  measure: null,
  blocks: [{ block: 'heading', level: 1, words: title }, ...blocks],
})

/** The packing checklist alone: what the box should hold, without a price. */
export const packingList = (paper: PackingPaper, language: Language): Printed =>
  paperOf(
    paper,
    language.say('confirmed.title'),
    [
      {
        block: 'words',
        words: language.say('confirmed.help', { count: paper.checklist.packed.length }),
      },
      ...checklistBlocks(paper, language.say),
    ],
    language,
  )

/** The packing checklist with the estimate, as the customer has both on one page. */
export function packingWithEstimate(paper: PackingPaper, language: Language): Printed {
  const list = packingList(paper, language)
  if (!paper.estimate) return list
  return {
    ...list,
    blocks: [...list.blocks, { block: 'page' }, ...estimateBlocks(paper.estimate, language.say)],
  }
}

/** The estimate alone; null where there is none. */
export const estimatePrinted = (paper: PackingPaper, language: Language): Printed | null =>
  paper.estimate &&
  paperOf(
    paper,
    language.say('printed.estimate'),
    estimateBlocks(paper.estimate, language.say),
    language,
  )

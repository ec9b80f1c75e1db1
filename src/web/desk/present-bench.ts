import type { Bench, BenchedPile } from '../../desk/benched.ts'
import type { Language } from '../../words/words.ts'
import { custodyPaths } from './custody-paths.ts'
import { deskPaths } from './paths.ts'
import { quiltWords } from './present-queue.ts'
import { sheetLinks } from './sheet-links.ts'
import type { BenchPage } from './view-bench.ts'
import { dayWords } from './when.ts'

function pileOf(pile: BenchedPile, language: Language): BenchPage['piles'][number] {
  const { say, locale } = language
  return {
    title: say('desk.pile', { number: pile.number }),
    line: [
      quiltWords(pile, language),
      ...(pile.needBy === null
        ? []
        : [say('desk.queue.by', { day: dayWords(pile.needBy, locale) })]),
    ].join(' · '),
    papers: [
      { label: say('custody.pile.link'), href: custodyPaths.pile(pile.number) },
      { label: say('laid_out.desk.open'), href: custodyPaths.laidOut(pile.number) },
      ...sheetLinks(pile.number, language),
    ],
    garments: pile.garments.map(({ item, tag, name, kind, grade }) => ({
      tag,
      name: name || say(`intake.kind.options.${kind}`),
      grade,
      // Without a grade there is no press plan, and so no sheet.
      href: grade && deskPaths.teardown(pile.number, item),
    })),
  }
}

export function benchPage({ piles, page, pages }: Bench, language: Language): BenchPage {
  const { say } = language
  return {
    page: 'bench',
    title: say('desk.bench.title'),
    empty: say('desk.bench.empty'),
    piles: piles.map((pile) => pileOf(pile, language)),
    pager:
      pages === 1
        ? null
        : {
            at: say('desk.queue.page', { page, pages }),
            before: page > 1 ? deskPaths.benchPage(page - 1) : null,
            after: page < pages ? deskPaths.benchPage(page + 1) : null,
          },
  }
}

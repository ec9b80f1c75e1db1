import { formatMoney } from '../../base/money.ts'
import type { Draft } from '../../desk/drafts.ts'
import type { GarmentImpact, ImpactCounts, PileImpact, PressTold } from '../../desk/impact.ts'
import type { ImpactReport } from '../../desk/impact-report.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import type { ChangeShown, DraftPage } from './view-draft.ts'
import { dayWords, momentWords } from './when.ts'

/** Counts that are told, in this order; those of nothing are left out but for the first two. */
const told: readonly (keyof ImpactCounts)[] = [
  'piles',
  'changed',
  'fails',
  'regraded',
  'worse',
  'better',
  'reasons',
  'pressed',
  'fits',
  'plans',
  'repriced',
]

/** Words of the draft's own files first: what it names may be new. */
type Named = (key: string) => string

const namedIn =
  ({ said }: ImpactReport, { code, say, has }: Language): Named =>
  (key) =>
    said[code]?.[key] ?? (has(key) ? say(key) : key)

const pressWords = (press: PressTold, { say }: Language): string =>
  [
    say(`trade.press.${press.method}`),
    ...(press.ceilingC === null ? [] : [say('bench.ceiling', { celsius: press.ceilingC })]),
  ].join(', ')

function garmentLines(garment: GarmentImpact, named: Named, language: Language): string[] {
  const { say, locale } = language
  const list = (ids: readonly string[], key: (id: string) => string) =>
    new Intl.ListFormat(locale).format(ids.map((id) => named(key(id))))
  const { grade, flags, fits, press } = garment
  const flag = (code: string) => named(`trade.flags.${code}.message`)
  const layout = (id: string) => `trade.layouts.${id}.name`
  return [
    ...(grade.from !== grade.to && grade.from && grade.to
      ? [
          say('desk.drafts.grade', {
            from: say(`grades.${grade.from}`),
            to: say(`grades.${grade.to}`),
          }),
        ]
      : []),
    ...flags.came.map((code) => say('desk.drafts.came', { reason: flag(code) })),
    ...flags.gone.map((code) => say('desk.drafts.gone', { reason: flag(code) })),
    ...(press
      ? [
          say('desk.drafts.press', {
            from: pressWords(press.from, language),
            to: pressWords(press.to, language),
          }),
        ]
      : []),
    ...(fits.came.length > 0
      ? [say('desk.drafts.suits', { layouts: list(fits.came, layout) })]
      : []),
    ...(fits.gone.length > 0
      ? [say('desk.drafts.suits_not', { layouts: list(fits.gone, layout) })]
      : []),
  ]
}

function priceLines({ price }: PileImpact, day: string, { say, locale }: Language): string[] {
  if (!price) return []
  const { from, to, lines, currency, when } = price
  const money = (minor: number) => formatMoney({ minor, currency }, locale)
  const by = (minor: number) => `${minor < 0 ? '−' : '+'}${money(Math.abs(minor))}`
  return [
    say(`desk.drafts.price.${when}`, { from: money(from), to: money(to), by: by(to - from), day }),
    ...(lines.length === 0
      ? []
      : [
          lines
            .map(({ code, byMinor }) => `${say(`trade.estimate.lines.${code}`)} ${by(byMinor)}`)
            .join(' · '),
        ]),
  ]
}

function changeShown(
  impact: PileImpact,
  { named, day, language }: { named: Named; day: string; language: Language },
): ChangeShown {
  const { say } = language
  const { number, status, garments, layout, plan, fails } = impact
  return {
    title: say('desk.pile', { number }),
    href: status === 'open' ? null : deskPaths.pile(number),
    lines: [
      ...(status === 'open' ? [say('desk.drafts.open')] : []),
      ...(fails === null ? [] : [say('desk.drafts.fails', { why: say(`failures.${fails}`) })]),
      ...(layout
        ? [
            say('desk.drafts.layout', {
              from: named(`trade.layouts.${layout.from}.name`),
              to: named(`trade.layouts.${layout.to}.name`),
            }),
          ]
        : []),
      ...priceLines(impact, day, language),
      ...(plan ? [say('desk.drafts.plan')] : []),
    ],
    garments: garments.map((garment) => ({
      name: `${garment.code} · ${garment.name ?? say(`intake.kind.options.${garment.kind}`)}`,
      lines: garmentLines(garment, named, language),
    })),
  }
}

function stateWords({ state, tried }: Draft, { say }: Language): string {
  const report = tried?.report
  if (state === 'cut-off' && report) {
    return say('desk.drafts.state.cut-off', { piles: report.counts.piles, total: report.total })
  }
  if (state === 'done' && report?.counts.changed === 0) return say('desk.drafts.state.nothing')
  return say(`desk.drafts.state.${state}`)
}

const numbersTold = (numbers: readonly number[], { locale }: Language): string =>
  new Intl.ListFormat(locale).format(numbers.toSorted((a, b) => a - b).map(String))

/** What a report tells; nothing where there is none. */
function reportShown(report: ImpactReport | null | undefined, language: Language) {
  const { say, locale } = language
  if (!report) return { counts: [], prices: null, changes: [], unlisted: null, agreed: null }
  const { counts, changes, unlisted, agreed } = report
  const day = dayWords(Date.parse(`${report.day}T00:00:00Z`), locale)
  const named = namedIn(report, language)
  return {
    counts: told
      .filter((name, i) => i < 2 || counts[name] > 0)
      .map((name) => ({ name: say(`desk.drafts.counts.${name}`), count: counts[name] })),
    prices: say('desk.drafts.prices', { day }),
    changes: changes.map((one) => changeShown(one, { named, day, language })),
    unlisted: unlisted > 0 ? say('desk.drafts.unlisted', { count: unlisted }) : null,
    agreed:
      agreed.length > 0
        ? say('desk.drafts.agreed', {
            count: agreed.length,
            numbers: numbersTold(agreed, language),
          })
        : null,
  }
}

export function draftPage(draft: Draft, language: Language): DraftPage {
  const { say, locale } = language
  const { id, files, who, at, state, tried } = draft
  return {
    page: 'draft',
    title: say('desk.drafts.one', {
      files: new Intl.ListFormat(locale).format(files.map(({ name }) => name)),
    }),
    by: say('desk.by', { name: who, at: momentWords(at, locale) }),
    state: stateWords(draft, language),
    again:
      state === 'working' ? { label: say('desk.drafts.again'), href: deskPaths.draft(id) } : null,
    findings: (tried?.findings ?? []).map(({ file, line, message }) => ({
      where: say('desk.drafts.where', { file, line }),
      message,
    })),
    ...reportShown(tried?.report, language),
    files: files.map(({ name }) => ({
      link: { label: say('desk.drafts.download', { name }), href: deskPaths.draftFile(id, name) },
      place: say('desk.drafts.place', { name }),
    })),
    also: { label: say('desk.drafts.also'), href: deskPaths.tryFile({ base: id }) },
    back: { label: say('desk.files.back'), href: deskPaths.files },
  }
}

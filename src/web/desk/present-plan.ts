import type { Failure } from '../../base/failures.ts'
import { planReviewed } from '../../desk/planned.ts'
import type { Review } from '../../desk/review.ts'
import type { Garment } from '../../intake/pile.ts'
import { type AsPlanned, asPlanned, type PlanState } from '../../intake/planned.ts'
import { chosen } from '../../intake/replies.ts'
import type { LeftOut, ToPlan } from '../../intake/to-plan.ts'
import { yardWords } from '../../papers/shortage-words.ts'
import type { Planned } from '../../planning/plan-pile.ts'
import type { Plans } from '../../planning/plans.ts'
import { canBeBought, roleDemand } from '../../quilt/plan/limits.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { failureSentence } from '../errors.ts'
import type { DeskContext } from './context.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import {
  type CutsWish,
  type PlannedGarments,
  pieceSize,
  planCuts,
  roleName,
} from './present-plan-cuts.ts'
import { garmentRows, type PlanReader } from './present-plan-garments.ts'
import { reviewedQuilts, shownAtDesk } from './present-plan-quilt.ts'
import { quiltWords } from './present-queue.ts'
import { shownSavings } from './present-savings.ts'
import { shortWords } from './present-short.ts'
import type { PlanPage, PlanRole, ShownPlan } from './view-plan.ts'
import type { SavingsPart } from './view-savings.ts'

const sum = (all: readonly { readonly count: number }[]): number =>
  all.reduce((total, { count }) => total + count, 0)

const labelOf = (garment: Garment, language: Language): string =>
  `${garment.code} · ${nameOf(garment, readerAt(language))}`

function roleRow({ pile, plan }: Planned, role: number, language: Language): PlanRole {
  const { say } = language
  const buy = plan.buy.filter((one) => one.role === role)
  const bought = sum(buy.filter(({ size }) => canBeBought(pile, size)))
  const steps = plan.cloth.find((one) => one.role === role)?.steps ?? 0
  return {
    name: roleName(pile, role, say),
    sizes: pile.sizes.flatMap((size, s) => {
      const count = pile.demand[s]![role]!
      return count > 0 ? [say('desk.plan.piece', { count, size: pieceSize(size, say) })] : []
    }),
    wanted: roleDemand(pile, role),
    given: sum(plan.supply.filter((one) => one.role === role)),
    bought,
    cloth: clothWords(steps * pile.cloth.step, language),
    lacking: sum(buy) - bought,
  }
}

const clothWords = (length: number, { say, locale }: Language): string | null =>
  length === 0 ? null : say('desk.plan.yards', { yards: yardWords(length, locale) })

function allRow({ pile, plan }: Planned, roles: readonly PlanRole[], language: Language): PlanRole {
  const total = (of: 'wanted' | 'given' | 'bought' | 'lacking') =>
    roles.reduce((all, role) => all + role[of], 0)
  const steps = plan.cloth.reduce((all, one) => all + one.steps, 0)
  return {
    name: language.say('desk.plan.all'),
    sizes: [],
    wanted: total('wanted'),
    given: total('given'),
    bought: total('bought'),
    cloth: clothWords(steps * pile.cloth.step, language),
    lacking: total('lacking'),
  }
}

/** `wish` is null while the plan may change: nobody is told how to cut by it. */
async function shownPlan(
  one: PlannedGarments,
  wish: CutsWish | null,
  reader: PlanReader,
  plans: Plans,
): Promise<ShownPlan> {
  const { language } = reader
  const roles = one.planned.pile.roles.map((_, role) => roleRow(one.planned, role, language))
  return {
    shortage: shortWords(one.planned, language),
    roles,
    all: allRow(one.planned, roles, language),
    garments: garmentRows(one, wish !== null, reader),
    cuts: wish && (await planCuts(one, wish, language, plans)),
  }
}

function outWords({ garment, barred }: LeftOut, language: Language): PlanPage['out'][number] {
  const { say } = language
  const key =
    barred.why === 'misfit' ? `trade.layouts.why.${barred.because}` : `desk.plan.why.${barred.why}`
  return { name: labelOf(garment, language), why: say(key) }
}

/** What holds a reader back from cutting, beside the plan itself. */
function cautionsOf({ pile, decisions }: Review, asked: ToPlan, language: Language): string[] {
  const { say, locale } = language
  const colourless = asked.used
    .filter(({ n }) => asked.colourless.includes(n))
    .map((garment) => labelOf(garment, language))
  const { layout, layoutChosen, size, sizeChosen } = pile.wish
  const notToCut = chosen(pile.replies, 'not_to_cut')
  return [
    ...(notToCut ? [`${say('desk.not_to_cut')} ${notToCut}`] : []),
    ...(decisions.at(-1)?.verdict === 'accept' ? [] : [say('desk.plan.mind.accepted')]),
    ...(layoutChosen
      ? []
      : [say('desk.plan.mind.layout', { layout: say(`trade.layouts.${layout.id}.name`) })]),
    ...(sizeChosen ? [] : [say('desk.plan.mind.size', { size: say(`trade.quilts.${size}`) })]),
    ...(colourless.length > 0
      ? [say('desk.plan.mind.colours', { names: new Intl.ListFormat(locale).format(colourless) })]
      : []),
  ]
}

/** What there is to do about garments that have no part in the plan. */
function todo({ used, out }: ToPlan, { say }: Language): string[] {
  const count = (why: LeftOut['barred']['why']) =>
    out.filter(({ barred }) => barred.why === why).length
  const [waits, misfit] = [count('waits'), count('misfit')]
  return [
    ...(waits > 0 ? [say('desk.plan.do.waits', { count: waits })] : []),
    ...(used.length === 0 && misfit > 0 ? [say('desk.plan.do.misfit', { count: misfit })] : []),
    ...(used.length === 0 && waits + misfit === 0 ? [say('desk.plan.do.none')] : []),
  ]
}

const mayChange: readonly PlanState[] = ['working', 'ended', 'waiting', 'failed']

/** What a reader wishes to see of a plan beside itself. */
export interface PlanWish {
  readonly cuts: CutsWish
  /** What would save cloth, which takes further plans. */
  readonly costs: boolean
}

/** What would save cloth; null while the plan may change, as what saves would change with it. */
async function savingsOf(
  { review, language }: PlanReader,
  { state, best }: AsPlanned,
  plans: Plans,
  isOpen: boolean,
): Promise<SavingsPart | null> {
  if (!best || mayChange.includes(state)) return null
  const { say } = language
  const here = deskPaths.plan(review.row.number)
  const open = `${here}?costs=1#plan-savings`
  if (!isOpen) return { state: 'closed', open: { label: say('desk.savings.open'), href: open } }
  return {
    state: 'open',
    close: { label: say('desk.savings.close'), href: `${here}#plan-savings` },
    ...(await shownSavings(review, best, { plans, href: open }, language)),
  }
}

/** The plan of a reviewed pile. `refused`: a form of the page that was not taken. */
export async function planPage(
  reader: PlanReader,
  context: Pick<DeskContext, 'knowledge' | 'plans'>,
  wish: PlanWish,
  refused: Failure | null = null,
): Promise<PlanPage> {
  const { review, language } = reader
  const { say } = language
  const { plans } = context
  const { number } = review.row
  const { layout, size, quilts } = review.pile.wish
  const asked = planReviewed(review)
  const planned = await asPlanned(asked, plans)
  const { state, best } = planned
  const cuts = state === 'working' ? null : wish.cuts
  const [soFar, plan, savings] = await Promise.all([
    reviewedQuilts(context, review, planned),
    best && shownPlan({ number, planned: best, used: asked.used }, cuts, reader, plans),
    savingsOf(reader, planned, plans, wish.costs),
  ])
  return {
    page: 'plan',
    title: say('desk.plan.title', { number }),
    quilt: [
      quiltWords({ layout: layout.id, size }, language),
      ...(quilts > 1 ? [say('desk.quilts', { count: quilts })] : []),
    ].join(' · '),
    back: { label: say('desk.pile', { number }), href: deskPaths.pile(number) },
    whatIf: { label: say('desk.what_if.link'), href: deskPaths.whatIf(number) },
    refused: refused && failureSentence(refused, language),
    state,
    words: [say(`desk.plan.state.${state}`), ...todo(asked, language)],
    again: mayChange.includes(state)
      ? { label: say('desk.plan.again'), href: deskPaths.plan(number) }
      : null,
    cautions: [
      ...(plan ? cautionsOf(review, asked, language) : []),
      ...(plan?.garments ?? [])
        .filter(({ must, pieces }) => must && pieces === 0)
        .map(({ code, name }) => say('desk.plan.not_used', { name: `${code} · ${name}` })),
    ],
    plan,
    savings,
    quilts: shownAtDesk(soFar, review, language),
    out: asked.out.map((one) => outWords(one, language)),
  }
}

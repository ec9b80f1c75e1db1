import { planReviewed } from '../../desk/planned.ts'
import type { Review } from '../../desk/review.ts'
import type { Garment } from '../../intake/pile.ts'
import { chosen } from '../../intake/replies.ts'
import type { LeftOut, ToPlan } from '../../intake/to-plan.ts'
import { shortageWords, yardWords } from '../../papers/shortage-words.ts'
import type { Planned } from '../../planning/plan-pile.ts'
import type { Plans, Progress } from '../../planning/plans.ts'
import { canBeBought, roleDemand } from '../../quilt/plan/limits.ts'
import { shortageOf } from '../../quilt/plan/shortage.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { asFailure } from '../errors.ts'
import type { DeskContext } from './context.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import {
  type CutsWish,
  cutsHref,
  type PlannedGarments,
  pieceSize,
  planCuts,
  roleName,
} from './present-plan-cuts.ts'
import { reviewedQuilts, shownAtDesk } from './present-plan-quilt.ts'
import { quiltWords } from './present-queue.ts'
import type { PlanGarment, PlanPage, PlanRole, PlanState, ShownPlan } from './view-plan.ts'

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

/** Why garments give nothing, by place; asked as though all of them had to be used. */
function idleOf({ pile, plan }: Planned): ReadonlyMap<number, string> {
  const asked = { ...pile, garments: pile.garments.map((one) => ({ ...one, must: true })) }
  const why = new Map(shortageOf(asked, plan).idle.map((one) => [one.garment, one.why]))
  return new Map(
    pile.garments.flatMap(({ id, must }, g) => {
      const reason = why.get(id)
      if (!reason || (reason === 'not-in-all' && !must)) return []
      return [[g, must && reason === 'no-room' ? 'must' : reason] as const]
    }),
  )
}

function garmentRows(one: PlannedGarments, isSettled: boolean, language: Language): PlanGarment[] {
  const { say } = language
  const { pile, plan } = one.planned
  const idle = idleOf(one.planned)
  return one.used.map((garment, g) => {
    const given = plan.supply.filter(({ garment: by, count }) => by === g && count > 0)
    const why = idle.get(g)
    const href = isSettled ? cutsHref(one, g) : null
    const name = nameOf(garment, readerAt(language))
    return {
      n: garment.n,
      code: garment.code,
      name,
      must: pile.garments[g]!.must,
      pieces: sum(given),
      gives: given.map(({ role, size, count }) =>
        say('desk.plan.gives', {
          count,
          size: pieceSize(pile.sizes[size]!, say),
          role: roleName(pile, role, say),
        }),
      ),
      idle: why === undefined ? null : say(`desk.plan.idle.${why}`),
      cut: href === null ? null : { label: say('desk.plan.how', { name }), href },
    }
  })
}

/** `wish` is null while the plan may change: nobody is told how to cut by it. */
async function shownPlan(
  one: PlannedGarments,
  wish: CutsWish | null,
  language: Language,
  plans: Plans,
): Promise<ShownPlan> {
  const { pile, plan } = one.planned
  const { say } = language
  const shortage = shortageOf(pile, plan)
  const roles = pile.roles.map((_, role) => roleRow(one.planned, role, language))
  const inWords = <T extends { readonly role: string }>(short: T): T => ({
    ...short,
    role: say(`desk.plan.role.${short.role}`),
  })
  return {
    // Garments that must be used and give nothing are told apart, by their names.
    shortage: shortageWords(
      {
        ...shortage,
        roles: shortage.roles.map(inWords),
        lacking: shortage.lacking.map(inWords),
        idle: [],
      },
      language,
    ),
    roles,
    all: allRow(one.planned, roles, language),
    garments: garmentRows(one, wish !== null, language),
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

function stateOf({ best, working }: Progress): PlanState {
  if (!best) return 'waiting'
  if (best.wrong !== null) return best.plan.supply.length > 0 ? 'ended' : 'failed'
  if (best.proven) return 'proven'
  return working ? 'working' : 'open'
}

/** The plan as far as it is known; a planning that is too busy is a state of the page, and no fault. */
async function progressOf({ pile }: ToPlan, plans: Plans): Promise<[PlanState, Planned | null]> {
  if (!pile) return ['empty', null]
  try {
    const progress = await plans.of(pile)
    const state = stateOf(progress)
    return [state, state === 'failed' ? null : progress.best]
  } catch (error) {
    if (asFailure(error).code !== 'busy') throw error
    return ['failed', null]
  }
}

const mayChange: readonly PlanState[] = ['working', 'ended', 'waiting', 'failed']

/** The plan of a reviewed pile. */
export async function planPage(
  review: Review,
  context: Pick<DeskContext, 'knowledge' | 'plans'>,
  wish: CutsWish,
  language: Language,
): Promise<PlanPage> {
  const { say } = language
  const { number } = review.row
  const { layout, size, quilts } = review.pile.wish
  const asked = planReviewed(review)
  const [state, planned] = await progressOf(asked, context.plans)
  const soFar = await reviewedQuilts(context, review, { asked, state, best: planned })
  const cuts = state === 'working' ? null : wish
  const plan =
    planned &&
    (await shownPlan({ number, planned, used: asked.used }, cuts, language, context.plans))
  return {
    page: 'plan',
    title: say('desk.plan.title', { number }),
    quilt: [
      quiltWords({ layout: layout.id, size }, language),
      ...(quilts > 1 ? [say('desk.quilts', { count: quilts })] : []),
    ].join(' · '),
    back: { label: say('desk.pile', { number }), href: deskPaths.pile(number) },
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
    quilts: shownAtDesk(soFar, review, language),
    out: asked.out.map((one) => outWords(one, language)),
  }
}

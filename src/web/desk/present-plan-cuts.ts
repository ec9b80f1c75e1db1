import { inchWords, quartersPerInch } from '../../base/units.ts'
import type { Garment } from '../../intake/pile.ts'
import type { AsPlanned } from '../../intake/planned.ts'
import { cutSheet, type PanelOnSheet } from '../../papers/cut-sheet.ts'
import type { Planned } from '../../planning/plan-pile.ts'
import type { Plans } from '../../planning/plans.ts'
import type { PieceSize } from '../../quilt/cut/panel.ts'
import { calledOf, type Pile } from '../../quilt/plan/instance.ts'
import type { PanelCutList } from '../../quilt/plan/panels.ts'
import type { PanelCut } from '../../quilt/plan/plan.ts'
import type { Language, Say } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import type { GarmentCuts, PlanCuts } from './view-plan.ts'

const cutsOnPage = 12

/** For so long a page waits for cuts; those that are not found by then come when it is looked at again. */
const drawMs = 700

/** Which cuts a reader wishes to see. */
export interface CutsWish {
  readonly page: number
  readonly open: boolean
}

/** A plan and the garments of its pile, in the pile's order. */
export interface PlannedGarments {
  readonly number: number
  readonly planned: Planned
  readonly used: readonly Garment[]
}

export const pieceSize = ({ w, h }: PieceSize, say: Say): string =>
  say('cut.measure', { w: inchWords(w / quartersPerInch), h: inchWords(h / quartersPerInch) })

/** Places of the garments that are cut, in the pile's order. */
const cutPlaces = ({ plan }: Planned): number[] =>
  [...new Set(plan.cuts.map(({ garment }) => garment))].sort((a, b) => a - b)

const query = ({ page, open }: CutsWish): string =>
  `?cuts=${page}${open ? '&open=all' : ''}#plan-cuts`

/** What pieces are for; of several quilts, with its number. */
export function roleName({ roles }: Pile, at: number, say: Say): string {
  const { quilt, ...own } = roles[at]!
  const role = say(`trade.roles.${calledOf(own)}`)
  const isOne = roles.every((other) => (other.quilt ?? 0) === (quilt ?? 0))
  return isOne ? role : say('desk.plan.in_quilt', { role, number: (quilt ?? 0) + 1 })
}

/** Where a garment's cuts stand; null where it is not cut. */
export function cutsHref({ number, planned }: PlannedGarments, g: number): string | null {
  const at = cutPlaces(planned).indexOf(g)
  if (at < 0) return null
  const page = Math.floor(at / cutsOnPage) + 1
  return `${deskPaths.plan(number)}?cuts=${page}#cut-${planned.pile.garments[g]!.id}`
}

/** The lists of a plan's cuts that are found; whether the others are still being looked for. */
interface FoundLists {
  readonly listOf: ReadonlyMap<PanelCut, PanelCutList | null>
  readonly working: boolean
}

async function listsOf(
  { pile, plan }: Planned,
  places: readonly number[],
  plans: Pick<Plans, 'cutLists'>,
): Promise<FoundLists> {
  const cuts = plan.cuts.filter(({ garment }) => places.includes(garment))
  const { lists, working } = await plans.cutLists(pile, cuts, drawMs)
  return { listOf: new Map(cuts.map((cut, n) => [cut, lists[n]!])), working }
}

/** Null: not all of its panels have their cuts. */
function panelsOf(
  { plan }: Planned,
  g: number,
  garment: Garment,
  { say, found }: { readonly say: Say; readonly found: FoundLists },
): PanelOnSheet[] | null {
  const sheets: PanelOnSheet[] = []
  for (const cut of plan.cuts.filter(({ garment: of }) => of === g)) {
    const list = found.listOf.get(cut)
    if (!list) return null
    const name = say(`trade.panels.${garment.panels[cut.panel]!.name}`)
    sheets.push({ name, panel: list.panel, pattern: list.pattern, times: cut.times })
  }
  return sheets
}

/** Cautions of a garment that stand where it is cut; the rest stand on its teardown sheet. */
const atTheBlade: readonly string[] = [
  'keep-the-marked-part',
  'hold-before-cutting',
  'never-turn',
  'contain-the-filling',
  'metal-out-first',
  'unpick-never-wet',
  'release-gathers',
  'gloves-and-closed-bag',
]

/** Nobody has told the planning where a spot or a hole is: whoever cuts must look. */
const hasAPlaceToMind = ({ facts }: Garment): boolean =>
  facts.consent !== 'yes' || facts.wear !== 'sound' || facts.soil !== 'clean'

const mindsOf = (garment: Garment, say: Say): string[] => [
  ...(hasAPlaceToMind(garment) ? [say('desk.plan.mind.marked')] : []),
  ...(garment.grading?.press.cautions ?? [])
    .filter((code) => atTheBlade.includes(code))
    .map((code) => say(`trade.cautions.${code}`)),
]

function garmentCuts(
  { number, planned, used }: PlannedGarments,
  g: number,
  found: FoundLists,
  language: Language,
): GarmentCuts {
  const { say } = language
  const { pile, plan } = planned
  const garment = used[g]!
  const { n, code } = garment
  const given = plan.supply.filter((one) => one.garment === g)
  const roles = given.map(({ role, size, count }) => {
    const { w, h } = pile.sizes[size]!
    return { w, h, count, role: roleName(pile, role, say) }
  })
  const panels = panelsOf(planned, g, garment, { say, found })
  return {
    n,
    code,
    heading: say('desk.plan.cut', {
      code,
      name: nameOf(garment, readerAt(language)),
      count: given.reduce((sum, { count }) => sum + count, 0),
    }),
    minds: mindsOf(garment, say),
    sheet: panels && cutSheet({ panels, roles, language }),
    wait: say(found.working ? 'desk.plan.not_yet' : 'desk.plan.no_cuts'),
    teardown: { label: say('desk.plan.teardown'), href: deskPaths.teardown(number, n) },
  }
}

/** The cuts of one garment of a reviewed pile; null where it is not cut, or the plan is not known. */
export async function cutsOfGarment(
  { number, asked, n }: { number: number; asked: AsPlanned; n: number },
  language: Language,
  plans: Pick<Plans, 'cutLists'>,
): Promise<GarmentCuts | null> {
  const planned = asked.best
  const g = planned?.pile.garments.findIndex(({ id }) => Number(id) === n) ?? -1
  if (!planned || g < 0 || !cutPlaces(planned).includes(g)) return null
  const found = await listsOf(planned, [g], plans)
  return garmentCuts({ number, planned, used: asked.asked.used }, g, found, language)
}

/** The cuts of one page; a page that is not there becomes the last. Null: nothing is cut. */
export async function planCuts(
  one: PlannedGarments,
  wish: CutsWish,
  language: Language,
  plans: Pick<Plans, 'cutLists'>,
): Promise<PlanCuts | null> {
  const { say } = language
  const places = cutPlaces(one.planned)
  if (places.length === 0) return null
  const pages = Math.ceil(places.length / cutsOnPage)
  const page = Math.min(wish.page, pages)
  const from = (page - 1) * cutsOnPage
  const here = places.slice(from, from + cutsOnPage)
  const { open } = wish
  const found = await listsOf(one.planned, here, plans)
  const garments = here.map((g) => garmentCuts(one, g, found, language))
  const path = deskPaths.plan(one.number)
  const other = (to: number): string => path + query({ page: to, open })
  return {
    open,
    toggle: {
      label: say(open ? 'desk.plan.close_all' : 'desk.plan.open_all'),
      href: path + query({ page, open: !open }),
    },
    garments,
    more: found.working
      ? { label: say('desk.plan.again'), href: path + query({ page, open }) }
      : null,
    at: say('desk.plan.page', { from: from + 1, to: from + here.length, count: places.length }),
    before: page > 1 ? other(page - 1) : null,
    after: page < pages ? other(page + 1) : null,
  }
}

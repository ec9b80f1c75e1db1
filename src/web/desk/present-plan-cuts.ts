import { canonical, sha256 } from '../../base/ids.ts'
import { inchWords, quartersPerInch } from '../../base/units.ts'
import type { Garment } from '../../intake/pile.ts'
import { cutSheet, type PanelOnSheet } from '../../papers/cut-sheet.ts'
import type { Planned } from '../../planning/plan-pile.ts'
import type { PieceSize } from '../../quilt/cut/panel.ts'
import { cutListOf, type PanelCutList } from '../../quilt/plan/panels.ts'
import type { PanelCut } from '../../quilt/plan/plan.ts'
import type { Language, Say } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import type { GarmentCuts, PlanCuts } from './view-plan.ts'

const cutsOnPage = 12

/** For so long a page looks for cuts; those that are not found by then come when it is looked at again. */
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

/** Where a garment's cuts stand; null where it is not cut. */
export function cutsHref({ number, planned }: PlannedGarments, g: number): string | null {
  const at = cutPlaces(planned).indexOf(g)
  if (at < 0) return null
  const page = Math.floor(at / cutsOnPage) + 1
  return `${deskPaths.plan(number)}?cuts=${page}#cut-${planned.pile.garments[g]!.id}`
}

/** Lists of cuts found so far: a large panel takes seconds, and every look at a plan wants the same. */
const found = new Map<string, PanelCutList>()
const mostFound = 512

function listOf({ pile }: Planned, { garment: g, panel: p, pattern }: PanelCut): PanelCutList {
  const { roles, panels } = pile.garments[g]!
  const { patterns: _, ...panel } = panels[p]!
  const { sizes, demand, shareMax, maxRoles } = pile
  const key = sha256(canonical([panel, pattern, roles, sizes, demand, shareMax, maxRoles]))
  const list = found.get(key) ?? cutListOf(pile, pile.garments[g]!, p, pattern)
  if (!list) throw new Error(`no cuts give ${pattern.join()} of panel ${p}`)
  found.delete(key)
  found.set(key, list)
  const [oldest] = found.keys()
  if (found.size > mostFound) found.delete(oldest!)
  return list
}

/** Null: the time is up before all of its panels are looked at. */
function panelsOf(
  planned: Planned,
  g: number,
  garment: Garment,
  { say, until }: { readonly say: Say; readonly until: number },
): PanelOnSheet[] | null {
  const sheets: PanelOnSheet[] = []
  for (const cut of planned.plan.cuts.filter(({ garment: of }) => of === g)) {
    if (performance.now() > until) return null
    const { panel, pattern } = listOf(planned, cut)
    const name = say(`trade.panels.${garment.panels[cut.panel]!.name}`)
    sheets.push({ name, panel, pattern, times: cut.times })
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
  until: number,
  language: Language,
): GarmentCuts {
  const { say } = language
  const { pile, plan } = planned
  const garment = used[g]!
  const { n, code } = garment
  const given = plan.supply.filter((one) => one.garment === g)
  const roles = given.map(({ role, size, count }) => {
    const { w, h } = pile.sizes[size]!
    return { w, h, count, role: say(`trade.roles.${pile.roles[role]!.name}`) }
  })
  const panels = panelsOf(planned, g, garment, { say, until })
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
    teardown: { label: say('desk.plan.teardown'), href: deskPaths.teardown(number, n) },
  }
}

/** The cuts of one page; a page that is not there becomes the last. Null: nothing is cut. */
export function planCuts(
  one: PlannedGarments,
  wish: CutsWish,
  language: Language,
  forMs = drawMs,
): PlanCuts | null {
  const { say } = language
  const places = cutPlaces(one.planned)
  if (places.length === 0) return null
  const pages = Math.ceil(places.length / cutsOnPage)
  const page = Math.min(wish.page, pages)
  const from = (page - 1) * cutsOnPage
  const here = places.slice(from, from + cutsOnPage)
  const { open } = wish
  const until = performance.now() + forMs
  const garments = here.map((g) => garmentCuts(one, g, until, language))
  const path = deskPaths.plan(one.number)
  const other = (to: number): string => path + query({ page: to, open })
  return {
    open,
    toggle: {
      label: say(open ? 'desk.plan.close_all' : 'desk.plan.open_all'),
      href: path + query({ page, open: !open }),
    },
    garments,
    more: garments.every(({ sheet }) => sheet)
      ? null
      : { label: say('desk.plan.again'), href: path + query({ page, open }) },
    at: say('desk.plan.page', { from: from + 1, to: from + here.length, count: places.length }),
    before: page > 1 ? other(page - 1) : null,
    after: page < pages ? other(page + 1) : null,
  }
}

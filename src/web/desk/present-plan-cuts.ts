import { inchWords, quartersPerInch } from '../../base/units.ts'
import type { Garment } from '../../intake/pile.ts'
import { cutSheet, type PanelOnSheet } from '../../papers/cut-sheet.ts'
import type { Planned } from '../../planning/plan-pile.ts'
import type { PieceSize } from '../../quilt/cut/panel.ts'
import { cutListOf } from '../../quilt/plan/panels.ts'
import type { Language, Say } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import type { GarmentCuts, PlanCuts } from './view-plan.ts'

/** So many garments' cuts stand on one page: each is looked for and drawn anew. */
const cutsOnPage = 12

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

function panelsOf({ pile, plan }: Planned, g: number, garment: Garment, say: Say): PanelOnSheet[] {
  return plan.cuts
    .filter((cut) => cut.garment === g)
    .map(({ panel, pattern, times }) => {
      const list = cutListOf(pile, pile.garments[g]!, panel, pattern)
      if (!list) throw new Error(`no cuts give ${pattern.join()} of panel ${panel}`)
      const name = say(`trade.panels.${garment.panels[panel]!.name}`)
      return { name, panel: list.panel, pattern: list.pattern, times }
    })
}

function garmentCuts(
  { number, planned, used }: PlannedGarments,
  g: number,
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
  return {
    n,
    code,
    heading: say('desk.plan.cut', {
      code,
      name: nameOf(garment, readerAt(language)),
      count: given.reduce((sum, { count }) => sum + count, 0),
    }),
    sheet: cutSheet({ panels: panelsOf(planned, g, garment, say), roles, language }),
    teardown: { label: say('desk.plan.teardown'), href: deskPaths.teardown(number, n) },
  }
}

/** The cuts of one page; a page that is not there becomes the last. Null: nothing is cut. */
export function planCuts(
  one: PlannedGarments,
  wish: CutsWish,
  language: Language,
): PlanCuts | null {
  const { say } = language
  const places = cutPlaces(one.planned)
  if (places.length === 0) return null
  const pages = Math.ceil(places.length / cutsOnPage)
  const page = Math.min(wish.page, pages)
  const from = (page - 1) * cutsOnPage
  const here = places.slice(from, from + cutsOnPage)
  const { open } = wish
  const path = deskPaths.plan(one.number)
  const other = (to: number): string => path + query({ page: to, open })
  return {
    open,
    toggle: {
      label: say(open ? 'desk.plan.close_all' : 'desk.plan.open_all'),
      href: path + query({ page, open: !open }),
    },
    garments: here.map((g) => garmentCuts(one, g, language)),
    at: say('desk.plan.page', { from: from + 1, to: from + here.length, count: places.length }),
    before: page > 1 ? other(page - 1) : null,
    after: page < pages ? other(page + 1) : null,
  }
}

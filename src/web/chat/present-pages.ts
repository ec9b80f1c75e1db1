import { dateFormat } from '../../base/formats.ts'
import { newId } from '../../base/ids.ts'
import type { Open } from '../../intake/conversation.ts'
import type { Pile } from '../../intake/pile.ts'
import { type AsPlanned, asKnown } from '../../intake/planned.ts'
import { chosen } from '../../intake/replies.ts'
import { toPlan } from '../../intake/to-plan.ts'
import { type Checklist, checklist, childCautions } from '../../papers/checklist.ts'
import { type EstimatePaper, estimatePaper } from '../../papers/estimate-paper.ts'
import type { KeptQuilt } from '../../papers/quilt-kept.ts'
import type { Plans } from '../../planning/plans.ts'
import { settledOf } from '../../quilt/plan/settled.ts'
import type { Language } from '../../words/words.ts'
import type { ChatContext } from './context.ts'
import { paths } from './paths.ts'
import { hidden, nameOf, type Reader, saidOf, standing, tagOf } from './present-garment.ts'
import { type Asking, questionOf, type Sent } from './present-question.ts'
import { type QuiltsSoFar, quiltsForNow } from './present-quilt.ts'
import { tallyOf } from './present-tally.ts'
import type {
  Action,
  ConfirmedPage,
  GatherPage,
  Photo,
  QuestionPage,
  ReviewPage,
  Said,
  Tag,
} from './view.ts'
import type { Posting } from './view-posting.ts'
import type { ShownQuilts } from './view-quilt.ts'
import type { StatusShown } from './view-status.ts'

export const readerOf = (open: Open, key: string, language: Language): Reader => ({
  key,
  language,
  seq: open.row.seq,
  newIdem: newId,
  editable: open.row.status === 'open',
})

export const tagsOf = (
  { pile: { garments, wish }, cloths }: Pick<Open, 'pile' | 'cloths'>,
  asked: number,
  reader: Reader,
): Tag[] => garments.map((garment, i) => tagOf(garment, cloths[i]!, { wish, asked }, reader))

const pileSaid = (pile: Pile, reader: Reader): Said[] =>
  pile.followed.parts.flatMap(({ path }) => saidOf(path, 0, reader))

function gatherActions(pile: Pile, reader: Reader): Action[] {
  const add: Action = {
    act: 'add-garment',
    postTo: paths.garments(reader.key),
    hidden: hidden(reader),
  }
  const confirm: Action = {
    act: 'confirm-pile',
    postTo: paths.confirm(reader.key),
    hidden: hidden(reader),
  }
  return pile.canClose ? [add, confirm] : [add]
}

export interface QuestionShown {
  readonly asking: Asking
  readonly sent: Sent | null
  readonly planned: AsPlanned
}

export function questionPage(
  open: Open,
  { asking, sent, planned }: QuestionShown,
  reader: Reader,
): QuestionPage {
  const { pile } = open
  return {
    page: 'question',
    question: questionOf(asking, pile, sent, reader),
    tags: tagsOf(open, asking.item, reader),
    tally: standing(pile).length > 0 ? tallyOf(pile, planned, reader) : null,
    pileAnswers: pileSaid(pile, reader),
    actions: [],
  }
}

/** What a pile becomes, as far as it is known. */
export interface Becoming {
  readonly planned: AsPlanned
  readonly quilts: QuiltsSoFar
}

export function gatherPage(
  { pile, cloths }: Open,
  { planned, quilts }: Becoming,
  reader: Reader,
): GatherPage {
  return {
    page: 'gather',
    tags: tagsOf({ pile, cloths }, 0, reader),
    tally: tallyOf(pile, planned, reader),
    pileAnswers: pileSaid(pile, reader),
    actions: gatherActions(pile, reader),
    closetHref: paths.closet(reader.key),
    quilts:
      standing(pile).length > 0
        ? quiltsForNow(quilts, pile, paths.garments(reader.key), reader)
        : null,
    cautions: childCautions(pile.recipient, reader.language.say),
  }
}

/** By the plan, as far as it is known; else roughly. */
export const priceOf = (pile: Pile, { best }: AsPlanned): Pile['estimate'] =>
  pile.priced(best && settledOf(best.pile, best.plan, best.proven))

function estimateOf(pile: Pile, planned: AsPlanned, language: Language): EstimatePaper | null {
  const priced = priceOf(pile, planned)
  return priced && estimatePaper(priced, pile.wish, language)
}

export function reviewPage(
  { pile, cloths }: Open,
  { planned, quilts }: Becoming,
  reader: Reader,
): ReviewPage {
  const actions = gatherActions(pile, reader)
  return {
    page: 'review',
    tags: tagsOf({ pile, cloths }, 0, reader),
    tally: tallyOf(pile, planned, reader),
    pileAnswers: pileSaid(pile, reader),
    cautions: childCautions(pile.recipient, reader.language.say),
    estimate: estimateOf(pile, planned, reader.language),
    quilts: quiltsForNow(quilts, pile, paths.review(reader.key), reader),
    open: standing(pile)
      .filter(({ open }) => open !== null)
      .map((garment) => ({
        label: nameOf(garment, reader),
        href: paths.question(reader.key, garment.n, garment.open!.id),
      })),
    confirm: actions.find(({ act }) => act === 'confirm-pile') ?? null,
    backHref: paths.garments(reader.key),
  }
}

/** What the customer was shown on confirming, kept word for word. */
export interface ConfirmedPaper {
  readonly pile: string
  readonly confirmedAt: number
  readonly checklist: Checklist
  readonly estimate: EstimatePaper | null
  readonly address: readonly string[]
  /** Null: they were not drawn yet. */
  readonly quilts: readonly KeptQuilt[] | null
}

export type PaperContext = Pick<ChatContext, 'knowledge' | 'clock'> & {
  readonly plans: Pick<Plans, 'known'>
}

function paperIn(
  open: Open,
  context: PaperContext,
  quilts: readonly KeptQuilt[] | null,
  language: Language,
): ConfirmedPaper {
  const { pile, row } = open
  const reader = readerOf(open, '', language)
  return {
    pile: String(row.number),
    confirmedAt: context.clock(),
    checklist: checklist(
      {
        recipient: pile.recipient,
        garments: standing(pile).flatMap((garment) =>
          garment.grading
            ? [
                {
                  ...garment,
                  grading: garment.grading,
                  better: garment.better?.customer ?? null,
                  name: nameOf(garment, reader),
                },
              ]
            : [],
        ),
        box: pile.box,
        leftovers: chosen(pile.replies, 'leftovers') ?? 'ask-later',
      },
      language,
    ),
    estimate: estimateOf(pile, asKnown(toPlan(open), context.plans), language),
    address: context.knowledge.shop.address,
    quilts,
  }
}

/** The papers of a pile in every language of the shop. */
export const confirmedPapers = (
  open: Open,
  context: PaperContext,
  quilts: readonly KeptQuilt[] | null = null,
): Readonly<Record<string, ConfirmedPaper>> =>
  Object.fromEntries(
    context.knowledge.shop.languages.map((code) => [
      code,
      paperIn(open, context, quilts, context.knowledge.languages.get(code)!),
    ]),
  )

/** What is found for the paper among what is kept beside it. */
export interface ShownOfConfirmed {
  readonly photoOf: (garment: number) => Photo | null
  readonly quilts: ShownQuilts | null
  /** Null on paper. */
  readonly status: StatusShown | null
  readonly posting: Posting | null
}

export function confirmedPage(
  paper: ConfirmedPaper,
  { photoOf, quilts, status, posting }: ShownOfConfirmed,
  {
    key,
    language,
    print,
    accepted,
    keepLink,
  }: {
    key: string
    language: Language
    print: boolean
    /** The workshop has taken the pile. */
    accepted: boolean
    keepLink: string
  },
): ConfirmedPage {
  const { say, locale } = language
  return {
    page: 'confirmed',
    status,
    pile: paper.pile,
    confirmedOn: dateFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(
      paper.confirmedAt,
    ),
    ...paper.checklist,
    packed: paper.checklist.packed.map((listed) => ({ ...listed, photo: photoOf(listed.n) })),
    waiting: paper.checklist.waiting.map((listed) => ({ ...listed, photo: photoOf(listed.n) })),
    address: paper.address,
    estimate: paper.estimate,
    quilts,
    posting,
    keepLink,
    papers: print
      ? []
      : [
          { label: say('papers.print'), href: paths.paper(key) },
          { label: say('printed.links.packing'), href: paths.pdf(key, 'packing') },
          { label: say('printed.links.tags'), href: paths.pdf(key, 'tags') },
          ...(accepted
            ? [{ label: say('printed.links.keepsake'), href: paths.keepsake(key) }]
            : []),
        ],
    print,
  }
}

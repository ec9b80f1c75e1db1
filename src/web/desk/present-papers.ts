import { Failure } from '../../base/failures.ts'
import { careOf } from '../../desk/care.ts'
import { verdictsOf } from '../../desk/consequences.ts'
import { planReviewed } from '../../desk/planned.ts'
import type { Review, ReviewedGarment } from '../../desk/review.ts'
import { asPlanned } from '../../intake/planned.ts'
import { chosen } from '../../intake/replies.ts'
import { type PlacedPiece, placedPieces } from '../../papers/piece-places.ts'
import type { Printed } from '../../papers/printed.ts'
import { benchPaper } from '../../papers/printed-bench.ts'
import { carePaper } from '../../papers/printed-care.ts'
import { keepsake } from '../../papers/printed-keepsake.ts'
import { quiltingSheet } from '../../papers/printed-quilting.ts'
import { tagSheet } from '../../papers/printed-tags.ts'
import { ticketSheet } from '../../papers/printed-tickets.ts'
import type { Extent } from '../../quilt/layout.ts'
import type { Language } from '../../words/words.ts'
import { tagLink } from '../chat/paths.ts'
import { nameOf } from '../chat/present-garment.ts'
import { taggedOf } from '../chat/present-papers.ts'
import type { QuiltsLaid } from '../chat/quilts.ts'
import type { DeskContext } from './context.ts'
import { readerAt } from './present-garment.ts'
import { cutsOfGarment } from './present-plan-cuts.ts'
import { reviewedQuilts } from './present-plan-quilt.ts'
import { teardownPage } from './present-teardown.ts'

/** Who a paper is for, and where a tag leads. */
export interface PaperReader {
  readonly context: Pick<DeskContext, 'knowledge' | 'plans'>
  readonly review: Review
  readonly language: Language
  /** The address people reach us at. */
  readonly outside: string
}

/** The quilts of a reviewed pile as far as they are laid, and its plan. */
async function laidOf({ context, review }: PaperReader) {
  const planned = await asPlanned(planReviewed(review), context.plans)
  return { planned, laid: await reviewedQuilts(context, review, planned) }
}

/** Throws `paper_waiting` where there is no laid quilt to show. */
async function laidWhole(reader: PaperReader): Promise<QuiltsLaid> {
  const { laid } = await laidOf(reader)
  if (laid.state !== 'drawn' || laid.laid.length === 0) throw new Failure('paper_waiting')
  return laid
}

function piecesOf({ laid }: QuiltsLaid): { pieces: PlacedPiece[]; quilts: Extent[] } {
  return {
    pieces: placedPieces(
      laid.map(({ design: { layout }, grid, cells }) => ({
        grid,
        cells,
        blockIn: layout.blockIn,
        sashIn: layout.sash?.width_in ?? 0,
      })),
    ),
    quilts: laid.map(({ grid }) => grid.finished),
  }
}

const pileOf = ({ review: { row } }: PaperReader) => ({
  pile: String(row.number),
  at: row.changed_at,
})

const called = ({ garment }: ReviewedGarment, { language }: PaperReader): string =>
  nameOf(garment, readerAt(language))

/** Garments that have a piece in a quilt, in the pile's order. */
function inQuilt({ review }: PaperReader, pieces: readonly PlacedPiece[]): ReviewedGarment[] {
  const used = new Set(pieces.map(({ garment }) => garment))
  return review.garments.filter(({ garment }) => used.has(garment.n))
}

/** The bench sheet of one garment. Throws `not_found` where it is not there or not graded. */
export async function benchPrinted(reader: PaperReader, n: number): Promise<Printed> {
  const { context, review, language } = reader
  const { sheet, spots } = teardownPage(review, n, language)
  const { facts, grading } = review.garments.find(({ garment }) => garment.n === n)!.garment
  const { planned, laid } = await laidOf(reader)
  const cuts = await cutsOfGarment(
    { number: review.row.number, asked: planned, n },
    language,
    context.plans,
  )
  return benchPaper(
    {
      ...pileOf(reader),
      ...piecesOf(laid),
      n,
      sheet,
      facts,
      press: grading!.press,
      spots,
      cut: cuts?.sheet ?? null,
      wait: cuts?.wait ?? language.say('desk.plan.no_cuts'),
      minds: cuts?.minds ?? [],
      units: context.knowledge.shop.units,
    },
    language,
  )
}

function tagsPrinted(reader: PaperReader): Printed {
  const { review, language, outside, context } = reader
  const verdicts = verdictsOf(review.garments)
  const here = review.garments
    .map(({ garment }) => garment)
    .filter(({ n }) => verdicts.get(n) !== 'decline')
  return tagSheet(
    {
      ...pileOf(reader),
      garments: taggedOf({ garments: here }, readerAt(language)),
      linkOf: (code) => tagLink(outside, code),
      units: context.knowledge.shop.units,
    },
    language,
  )
}

async function ticketsPrinted(reader: PaperReader): Promise<Printed> {
  const { pieces, quilts } = piecesOf(await laidWhole(reader))
  return ticketSheet(
    {
      ...pileOf(reader),
      pieces,
      quilts: quilts.length,
      garments: inQuilt(reader, pieces).map((one) => ({
        n: one.garment.n,
        code: one.garment.code,
        name: called(one, reader),
        facts: one.garment.facts,
      })),
      units: reader.context.knowledge.shop.units,
    },
    reader.language,
  )
}

async function quiltingPrinted(reader: PaperReader): Promise<Printed> {
  const { pieces, quilts } = piecesOf(await laidWhole(reader))
  return quiltingSheet(
    {
      ...pileOf(reader),
      recipient: reader.review.pile.recipient,
      pieces,
      quilts: quilts.length,
      garments: inQuilt(reader, pieces).map((one) => ({
        n: one.garment.n,
        code: one.garment.code,
        name: called(one, reader),
        facts: one.garment.facts,
        ceilingC: one.garment.grading?.press.ceilingC ?? null,
      })),
    },
    reader.language,
  )
}

async function carePrinted(reader: PaperReader): Promise<Printed> {
  const { pieces } = piecesOf(await laidWhole(reader))
  const own = inQuilt(reader, pieces)
  const byNumber = new Map(own.map((one) => [one.garment.n, one]))
  return carePaper(
    {
      ...pileOf(reader),
      recipient: reader.review.pile.recipient,
      shop: reader.context.knowledge.shop.name,
      care: careOf(own),
      nameOf: (n) => {
        const one = byNumber.get(n)!
        return `${one.garment.code} ${called(one, reader)}`
      },
    },
    reader.language,
  )
}

/** The quilt with its pieces numbered, and every garment's story. Throws `paper_waiting` while it is not laid. */
export async function keepsakePrinted(reader: PaperReader): Promise<Printed> {
  const { drawn } = await laidWhole(reader)
  return keepsake(
    {
      ...pileOf(reader),
      quilts: drawn,
      shop: reader.context.knowledge.shop.name,
      garments: reader.review.garments.map((one) => ({
        n: one.garment.n,
        name: called(one, reader),
        story: chosen(one.garment.replies, 'story') ?? '',
      })),
    },
    reader.language,
  )
}

/** Papers that follow from a pile as it is now, by what they are called in an address. */
export const pilePapers = {
  tags: async (reader: PaperReader) => tagsPrinted(reader),
  tickets: ticketsPrinted,
  quilting: quiltingPrinted,
  care: carePrinted,
  keepsake: keepsakePrinted,
} as const

export type PilePaper = keyof typeof pilePapers

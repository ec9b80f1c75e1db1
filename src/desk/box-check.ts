import { Failure } from '../base/failures.ts'
import { type Condition, isolates } from '../custody/conditions.ts'
import { follow } from '../custody/follow.ts'
import type { State } from '../custody/states.ts'
import { subjectCode } from '../custody/subject.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanText } from '../flow/text.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { BoxResult } from '../store/schema-custody.ts'
import { keepResult } from './box-results.ts'
import { reasonLimits } from './decisions.ts'
import { type Ledger, onLedger } from './ledger.ts'
import { queueMail } from './mail/queue-mail.ts'
import { type At, bearLocked, moveLocked } from './moving.ts'
import { readFound } from './parcels.ts'
import { projectKnown, setFactsLocked } from './set-facts.ts'

/** What a receiver says of one garment of the list. */
export interface CheckedGarment {
  readonly item: number
  readonly result: Exclude<BoxResult, 'extra'>
  /** True values of the facts that differ, by name. */
  readonly facts: Readonly<Record<string, string>>
  readonly condition: readonly string[]
  readonly note: string
  readonly photos: readonly string[]
  /** The garment's newest entry that the page knew. */
  readonly seen: number
  /** When the newest fact that the page knew of it was set. */
  readonly factsSeen: number
}

/** A thing that is not on the list. */
export interface ExtraThing {
  readonly note: string
  readonly condition: readonly string[]
}

export interface BoxCheck {
  /** The parcel's key. */
  readonly parcel: string
  /** Where what is here is put. */
  readonly place: string
  readonly garments: readonly CheckedGarment[]
  readonly extra: ExtraThing | null
  /** Nothing is left in the box. */
  readonly emptied: boolean
  /** What a condition is called, in the words of who writes. */
  readonly tell: (condition: readonly Condition[]) => string
  readonly idem: string
  readonly who: string
}

/** States in which a garment is looked at for the first time. */
const arriving: readonly State[] = ['expected', 'not-sent', 'missing', 'received']

/** What was written, or else the code of the parcel that it was not in or came out of. */
const whyOf = ({ row }: Ledger, { parcel }: BoxCheck, note: string): string =>
  lengthOf(cleanText(note)) < reasonLimits.shortest ? subjectCode(row.number, parcel) : note

/** The moves that a result makes of a garment: received, then checked or isolated; or missed. */
async function moveChecked(
  ledger: Ledger,
  check: BoxCheck,
  { item, result, note, seen }: CheckedGarment,
  condition: readonly Condition[],
): Promise<void> {
  const { parcel, place, idem, who } = check
  const subject = String(item)
  const state = follow(ledger.entries).get(subject)?.state
  if (!state) throw new Failure('not_found')
  const same = { subject, photo: null, who }
  const step = (name: string) => `${idem}-${item}-${name}`
  if (result === 'missing') {
    if (state === 'missing' || state === 'not-sent') return
    const miss = { ...same, move: 'miss' as const, place: '', via: null, seen, idem: step('miss') }
    await moveLocked(ledger, { ...miss, note: whyOf(ledger, check, note) })
    return
  }
  if (!arriving.includes(state)) {
    if (seen !== follow(ledger.entries).get(subject)!.last) throw new Failure('moved_meanwhile')
    return
  }
  let last = seen
  if (state !== 'received') {
    const receive = { ...same, move: 'receive' as const, place, via: parcel, note }
    last = (await moveLocked(ledger, { ...receive, seen, idem: step('receive') })).seq
  }
  const apart = isolates(condition)
  await moveLocked(ledger, {
    ...same,
    move: apart ? 'isolate' : 'hold',
    place: '',
    via: null,
    note: apart ? check.tell(condition) : '',
    seen: last,
    idem: step('check'),
  })
}

async function checkOne(ledger: Ledger, check: BoxCheck, one: CheckedGarment): Promise<void> {
  const here = one.result !== 'missing'
  const condition = here && one.condition.length > 0 ? readFound(one.condition) : []
  const differs = one.result === 'different' ? Object.keys(one.facts) : []
  if (one.result === 'different' && differs.length === 0) throw new Failure('nothing_ticked')
  await moveChecked(ledger, check, one, condition)
  if (differs.length > 0) {
    await setFactsLocked(ledger.db, ledger, ledger.row.id, {
      item: one.item,
      facts: one.facts,
      source: 'bench',
      reason: whyOf(ledger, check, one.note),
      who: check.who,
      seen: one.factsSeen,
    })
  }
  await keepResult(ledger, {
    ...one,
    subject: String(one.item),
    differs,
    condition,
    who: check.who,
  })
}

/** A thing that is not on the list gets a number of its own and is kept apart. */
async function takeExtra(ledger: Ledger, check: BoxCheck, extra: ExtraThing): Promise<void> {
  const { parcel, place, idem, who } = check
  const condition = extra.condition.length > 0 ? readFound(extra.condition) : []
  const { subject, seq } = await bearLocked(ledger, {
    kind: 'extra',
    move: 'set-apart',
    place,
    note: extra.note,
    photo: null,
    via: parcel,
    idem: `${idem}-extra`,
    who,
  })
  if (isolates(condition)) {
    await moveLocked(ledger, {
      subject,
      move: 'isolate',
      place: '',
      note: check.tell(condition),
      photo: null,
      via: null,
      seen: seq,
      idem: `${idem}-extra-check`,
      who,
    })
  }
  await keepResult(ledger, {
    subject,
    result: 'extra',
    differs: [],
    condition,
    note: extra.note,
    photos: [],
    who,
  })
}

/** A mail to the customer with what came and what did not, in the same transaction. */
async function tellCustomer(ledger: Ledger, knowledge: Knowledge, check: BoxCheck): Promise<void> {
  const { garments, extra, idem } = check
  if (garments.length === 0 && !extra) return
  const count = (result: BoxResult) => garments.filter((one) => one.result === result).length
  await queueMail(ledger.db, knowledge, {
    pile: ledger.row,
    template: 'box_check',
    gaps: {
      matched: count('matched'),
      different: count('different'),
      missing: count('missing'),
      extra: extra ? 1 : 0,
    },
    once: `box check ${idem}`,
    at: ledger.clock(),
  })
}

/**
 * Keeps what the box check found, all or nothing: results, facts as they truly are, and where everything is now. The
 * same sent twice is one. Throws what moves, facts and conditions throw; `nothing_ticked` where nothing is told.
 */
export const saveBoxCheck = (
  at: At & { readonly knowledge: Knowledge },
  pileId: string,
  check: BoxCheck,
): Promise<void> =>
  onLedger(at, pileId, check.who, async (ledger) => {
    if (ledger.entries.some(({ idem }) => idem.startsWith(`${check.idem}-`))) return
    const parcel = follow(ledger.entries).get(check.parcel)
    if (!parcel) throw new Failure('not_found')
    if (parcel.state !== 'arrived' && parcel.state !== 'unpacked') {
      throw new Failure('parcel_isolated')
    }
    if (check.garments.length === 0 && !check.extra && !check.emptied) {
      throw new Failure('nothing_ticked')
    }
    for (const one of check.garments) await checkOne(ledger, check, one)
    if (check.extra) await takeExtra(ledger, check, check.extra)
    if (check.emptied && parcel.state === 'arrived') {
      await moveLocked(ledger, {
        subject: check.parcel,
        move: 'unpack',
        place: '',
        note: '',
        photo: null,
        via: null,
        seen: parcel.last,
        idem: `${check.idem}-unpack`,
        who: check.who,
      })
    }
    await projectKnown(ledger.db, at.knowledge, ledger.row)
    await tellCustomer(ledger, at.knowledge, check)
  })

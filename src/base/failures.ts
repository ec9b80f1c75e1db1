/**
 * Every way the product refuses or fails. A code is stable: pages, logs and the command line name it.
 * The sentences stand with the words, in each language, under `failures.<code>`.
 */
export const failures = {
  // what a person sent
  empty_answer: { status: 422 },
  answer_not_offered: { status: 422 },
  answer_too_long: { status: 422 },
  number_out_of_range: { status: 422 },
  not_a_number: { status: 422 },
  number_too_fine: { status: 422 },
  none_with_others: { status: 422 },
  nothing_ticked: { status: 422 },
  signs_conflict: { status: 422 },
  email_not_valid: { status: 422 },
  question_moved_on: { status: 409 },
  too_many_items: { status: 409 },
  nothing_gathered: { status: 409 },
  pile_confirmed: { status: 409 },
  form_incomplete: { status: 400 },
  bad_input: { status: 400 },
  unknown_verb: { status: 400 },
  empty_file: { status: 422 },
  unsupported_type: { status: 415 },
  corrupt_image: { status: 422 },
  too_many_pixels: { status: 422 },
  too_large: { status: 413 },
  too_small: { status: 422 },
  too_many_photos: { status: 422 },
  too_many_spots: { status: 422 },
  too_many_lines: { status: 422 },
  line_too_long: { status: 422 },
  spot_outside: { status: 422 },
  spot_without_photo: { status: 422 },
  sheet_not_named: { status: 422 },
  corners_incomplete: { status: 422 },
  corner_outside: { status: 422 },
  corners_no_sheet: { status: 422 },
  corners_not_that_sheet: { status: 422 },
  corners_other_sheet: { status: 422 },
  sheet_small: { status: 422 },
  sheet_unsure: { status: 422 },

  // what is not there
  not_found: { status: 404 },
  link_unknown: { status: 404 },
  link_expired: { status: 410 },
  method_not_allowed: { status: 405 },

  // who may
  form_expired: { status: 403 },
  sign_in_wrong: { status: 401 },
  not_signed_in: { status: 401 },
  not_allowed: { status: 403 },
  once_link_used: { status: 410 },
  password_too_short: { status: 422 },
  password_too_long: { status: 422 },
  email_taken: { status: 409 },
  name_missing: { status: 422 },

  // messages
  too_many_messages: { status: 409 },

  // at the desk
  reason_missing: { status: 422 },
  decided_meanwhile: { status: 409 },
  garments_undecided: { status: 409 },
  way_not_real: { status: 422 },
  pile_decided: { status: 409 },
  pieces_unlike: { status: 422 },
  quilt_changed: { status: 409 },

  // what the owner does
  last_owner: { status: 409 },
  people_full: { status: 409 },
  person_changed: { status: 409 },
  person_closed: { status: 409 },
  shop_incomplete: { status: 422 },
  file_name_wrong: { status: 422 },
  file_too_long: { status: 413 },

  // where things are
  moved_meanwhile: { status: 409 },
  move_not_now: { status: 409 },
  move_too_early: { status: 409 },
  place_missing: { status: 422 },
  undo_not_now: { status: 409 },
  parcel_isolated: { status: 409 },
  nothing_sewn: { status: 409 },
  // what the bench writes down
  record_not_now: { status: 409 },
  release_same_person: { status: 409 },
  release_too_early: { status: 409 },
  test_too_hot: { status: 422 },
  test_not_passed: { status: 422 },
  size_missing: { status: 422 },
  // the laid-out quilt
  nothing_cut: { status: 409 },
  laid_anew: { status: 409 },
  sewing_begun: { status: 409 },
  said_day_wrong: { status: 422 },
  // offers and money
  not_money: { status: 422 },
  too_much_money: { status: 422 },
  amount_missing: { status: 422 },
  how_missing: { status: 422 },
  card_number: { status: 422 },
  nothing_agreed: { status: 409 },
  payment_too_large: { status: 422 },
  refund_too_large: { status: 422 },
  payment_undone: { status: 409 },
  too_many_amendments: { status: 422 },
  amendment_incomplete: { status: 422 },
  day_not_ahead: { status: 422 },
  total_below_zero: { status: 422 },
  deposit_too_large: { status: 422 },
  promise_too_early: { status: 422 },
  pile_not_accepted: { status: 409 },
  offer_not_shown: { status: 409 },
  offered_meanwhile: { status: 409 },
  offer_name_missing: { status: 422 },
  offer_not_ticked: { status: 422 },
  offer_expired: { status: 410 },
  offer_superseded: { status: 409 },
  pile_withdrawn: { status: 409 },
  erase_not_ticked: { status: 422 },
  erase_not_now: { status: 409 },
  too_late_to_change: { status: 409 },

  // our side
  too_many_requests: { status: 429 },
  too_many_intakes: { status: 429 },
  // Not 429: a page's script waits those out, and a person may want to go on without the photo.
  too_many_photos_now: { status: 409 },
  internal: { status: 500 },
  busy: { status: 503 },
  no_rate_for_date: { status: 500 },
  store_unavailable: { status: 503 },
  // Of this photo, which would fail again: where the machine had too little time for it, it is `busy`.
  photo_failed: { status: 422 },
  label_unread: { status: 500 },
  picture_failed: { status: 500 },
  paper_failed: { status: 503 },
  paper_waiting: { status: 409 },
  picture_waiting: { status: 503 },

  // keeping: backups and moves
  file_there: { status: 409 },
  file_not_written: { status: 422 },
  file_unread: { status: 422 },
  nothing_kept: { status: 422 },
  backup_unknown: { status: 422 },
  backup_too_new: { status: 422 },
  backup_cut_short: { status: 422 },
  backup_altered: { status: 422 },
  ledger_damaged: { status: 422 },
  store_not_empty: { status: 409 },
  restore_differs: { status: 500 },
  store_unfinished: { status: 500 },

  // starting up
  setting_invalid: { status: 500 },
  flows_invalid: { status: 500 },
  words_missing: { status: 500 },
  folder_in_use: { status: 500 },
  store_too_new: { status: 500 },
} as const satisfies Record<string, { status: number }>

export type FailureCode = keyof typeof failures

/** A refusal or a fault with a code of the catalogue. `details` fills the sentence; `cause` is kept. */
export class Failure extends Error {
  override readonly name = 'Failure'
  readonly code: FailureCode
  readonly details: Readonly<Record<string, string | number>>

  constructor(
    code: FailureCode,
    details: Record<string, string | number> = {},
    options?: { cause?: unknown },
  ) {
    super(Object.keys(details).length > 0 ? `${code} ${JSON.stringify(details)}` : code, options)
    this.code = code
    this.details = details
  }

  get status(): number {
    return failures[this.code].status
  }
}

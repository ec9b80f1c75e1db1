/**
 * Every mail there is. Its words stand under `mails.<template>` in each language: `subject`, `lead` (before
 * what is quoted), `link`, and `after` (below the link). `opens`: which of the customer's pages the link
 * leads to, behind their key. A reminder can be stopped; any other mail is sent all the same.
 */
export const mailTemplates = {
  /** Staff ask something. Gaps: who, about. */
  question: { reminder: false, opens: '/messages' },
  /** Staff tell or answer something. Gaps: who, about. */
  message: { reminder: false, opens: '/messages' },
  /** An offer is there to be read. Gaps: until. */
  offer: { reminder: false, opens: '' },
  /** The customer's yes to an offer is kept. Gaps: total, deposit, promised. */
  agreed: { reminder: false, opens: '' },
  /** Money came in or went back. Gaps: number, kind, amount. */
  receipt: { reminder: false, opens: '' },
  /** A box came and was checked. Gaps: matched, different, missing, extra. */
  box_check: { reminder: false, opens: '' },
  /** The quilt is laid out, for the customer to look at. */
  laid_out: { reminder: false, opens: '/laid-out' },
  /** Their yes to it is kept. Gaps: how ("page" or "phone"), by, day. */
  laid_yes: { reminder: false, opens: '/laid-out' },
  /** An intake was left alone. Gaps: count. */
  remind_open: { reminder: true, opens: '' },
  /** A question of the shop was not answered. Gaps: who, about. */
  remind_question: { reminder: true, opens: '/messages' },
} as const satisfies Record<string, { reminder: boolean; opens: '' | `/${string}` }>

export type MailTemplate = keyof typeof mailTemplates

/** One thing after the other of what a mail says; text and HTML are made of the same. */
export type Part =
  | { readonly kind: 'say'; readonly text: string }
  /** What somebody wrote, set apart. */
  | { readonly kind: 'quote'; readonly text: string }
  | { readonly kind: 'link'; readonly text: string; readonly href: string }

export interface Mailbox {
  readonly name: string
  readonly address: string
}

/** A mail before it has a form. */
export interface Letter {
  /** Names the mail in its Message-ID, the same in every try: letters and digits. */
  readonly id: string
  readonly from: Mailbox
  readonly to: Mailbox
  readonly subject: string
  readonly parts: readonly Part[]
  readonly language: string
  /** When it is sent, ms UTC. */
  readonly at: number
  /** Where reminders are stopped; null: this is none. */
  readonly stopHref: string | null
}

/** A line of a header: whatever would end it or be unseen in it is a space. */
const line = (text: string): string => text.replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ').trim()

const marks: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

const escaped = (text: string): string => text.replace(/[&<>"']/g, (mark) => marks[mark]!)

const broken = (text: string): string => escaped(text).replaceAll('\n', '<br>')

function plainPart(part: Part): string {
  switch (part.kind) {
    case 'say':
      return part.text
    case 'quote':
      return part.text.replaceAll(/^/gm, '> ')
    case 'link':
      return `${part.text}:\n${part.href}`
  }
}

function htmlPart(part: Part): string {
  switch (part.kind) {
    case 'say':
      return `<p>${broken(part.text)}</p>`
    case 'quote':
      return `<blockquote dir="auto">${broken(part.text)}</blockquote>`
    case 'link':
      return `<p><a href="${escaped(part.href)}">${escaped(part.text)}</a></p>`
  }
}

export const plainText = (parts: readonly Part[]): string =>
  `${parts.map(plainPart).join('\n\n')}\n`

export const htmlText = (parts: readonly Part[], language: string): string =>
  [
    `<!doctype html>\n<html lang="${escaped(language)}">`,
    '<head><meta charset="utf-8"></head>\n<body>',
    ...parts.map(htmlPart),
    '</body>\n</html>\n',
  ].join('\n')

/**
 * Header fields of a mail that can be stopped: RFC 2369 and, where the page is reached over https as
 * RFC 8058 asks, RFC 8058's one POST.
 */
function stopFields(href: string | null): Record<string, string> {
  if (href === null) return {}
  return {
    'List-Unsubscribe': `<${href}>`,
    ...(href.startsWith('https:') && { 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' }),
  }
}

const mailbox = ({ name, address }: Mailbox): Mailbox => ({ name: line(name), address })

/** An address that a header or an envelope can hold as it is; which ones are asked of, their giver says. */
const isPlain = (address: string): boolean =>
  /^[^\s"(),:;<>[\\\]\p{C}]+@[^\s"(),:;<>@[\\\]\p{C}]+$/u.test(address)

/** A letter as the mailing package takes it. Null where its address would say more than an address. */
export function messageOf(letter: Letter) {
  const { id, from, to, subject, parts, language, at, stopHref } = letter
  if (!isPlain(to.address)) return null
  return {
    messageId: `<${id}@${from.address.slice(from.address.lastIndexOf('@') + 1)}>`,
    from: mailbox(from),
    replyTo: mailbox(from),
    to: mailbox(to),
    envelope: { from: from.address, to: [to.address] },
    subject: line(subject),
    date: new Date(at),
    text: plainText(parts),
    html: htmlText(parts, language),
    headers: {
      'Content-Language': language,
      // No answering machine answers it (RFC 3834).
      'Auto-Submitted': 'auto-generated',
      ...stopFields(stopHref),
    },
    disableFileAccess: true,
    disableUrlAccess: true,
  }
}

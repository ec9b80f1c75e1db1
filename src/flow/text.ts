// Marks that turn the direction of what follows: a name could make a printed line read otherwise.
const turners = /[\u202a-\u202e\u2066-\u2069]/gu
const unseen = /[\u200b\u2060\ufeff]|\p{Cs}/gu
const controls = /(?![\n\t])\p{Cc}/gu
const lineEnds = /\r\n?|[\u0085\u2028\u2029]/gu

/** Text as it is kept: composed (NFC), trimmed, without control characters or hidden marks. */
export const cleanText = (raw: string): string =>
  raw
    .normalize('NFC')
    .replace(lineEnds, '\n')
    .replace(controls, '')
    .replace(turners, '')
    .replace(unseen, '')
    .trim()

/** The same on one line. */
export const cleanLine = (raw: string): string => cleanText(raw).replace(/\s+/gu, ' ')

/** Whether nothing of a text can be seen. */
export const isBlank = (text: string): boolean => /^[\p{Z}\p{C}]*$/u.test(text)

const vulgar = /[\u00bc-\u00be\u2150-\u215e]/gu

/**
 * A number as people write it: 12, 12.5, 12,5, 1/2, 12 1/2, 12½, full-width digits. Null where it is
 * none, or where it may mean two things: 1,000 is a thousand to some and one to others.
 */
export function readAmount(raw: string): number | null {
  const text = raw
    .replace(vulgar, (fraction) => ` ${fraction}`)
    .normalize('NFKC')
    .replace(/[\u2044\u2215]/gu, '/')
    .replace(/\u2212/gu, '-')
    .trim()
  const decimal = /^([+-]?\d{1,9})(?:[.,](\d{1,2}|\d{4,9}))?$/u.exec(text)
  if (decimal) return Number(`${decimal[1]}.${decimal[2] ?? '0'}`)

  const mixed = /^(?:(\d{1,9})[ -]+)?(\d{1,4}) ?\/ ?(\d{1,4})$/u.exec(text)
  if (!mixed || Number(mixed[3]) === 0) return null
  return Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3])
}

/** Whether an address has the shape of one; that it reaches someone only a mail can tell. */
export function isEmail(text: string): boolean {
  const at = text.lastIndexOf('@')
  const local = text.slice(0, at)
  const host = text.slice(at + 1)
  if (at < 1 || local.length > 64 || host.length > 253) return false
  return isLocal.test(local) && isHost.test(host)
}

const isLocal = /^[^\s@"(),:;<>[\\\]\p{C}.]+(?:\.[^\s@"(),:;<>[\\\]\p{C}.]+)*$/u
const label = '[\\p{L}\\p{N}](?:[\\p{L}\\p{M}\\p{N}-]{0,61}[\\p{L}\\p{M}\\p{N}])?'
const isHost = new RegExp(`^(?:${label}\\.)+${label}$`, 'u')

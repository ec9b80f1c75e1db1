import { Readable } from 'node:stream'
import { stringify } from 'csv-stringify'
import { numberFormat } from '../base/formats.ts'

/** Text, a number, or nothing. */
export type Cell = string | number | null

/**
 * A spreadsheet takes a cell that begins so for a formula, or may once its quotes are gone: the characters that the
 * OWASP page on CSV injection names, those of full width with them. A leading ' is among them, so that taking one
 * leading ' away always gives back what was there.
 */
const formula = /^[=+\-@\t\r\n'\uff1d\uff0b\uff0d\uff20]/

/** A text that no spreadsheet runs: with a ' before it where it could be taken for a formula. */
export const harmless = (text: string): string => (formula.test(text) ? `'${text}` : text)

/** What `harmless` was given. */
export const restored = (cell: string): string => (cell.startsWith("'") ? cell.slice(1) : cell)

/** A time as ISO 8601, UTC; nothing where there is none. */
export const isoTime = (at: number | null): string | null =>
  at === null ? null : new Date(at).toISOString()

/** Minor units as a decimal, with the digits that the currency has. */
export function decimal(minor: number | null, currency: string): string | null {
  if (minor === null) return null
  const format = numberFormat('en', { style: 'currency', currency })
  const digits = format.resolvedOptions().maximumFractionDigits ?? 2
  return (minor / 10 ** digits).toFixed(digits)
}

/**
 * Records as RFC 4180 has them: a header, commas, CRLF, UTF-8, quotes around what needs them. Numbers stand as they
 * are; every text is `harmless`. The rows are read as fast as they are taken.
 */
export function csvStream(
  columns: readonly string[],
  rows: AsyncIterable<readonly Cell[]> | Iterable<readonly Cell[]>,
): Readable {
  const lines = stringify({
    header: true,
    columns: [...columns],
    record_delimiter: 'windows',
    // The library knows its own line ends alone, and readers trim what is bare.
    quoted_match: /[\r\n]|^\s|\s$/,
    cast: { string: (text, { header }) => (header ? text : harmless(text)) },
  })
  const source = Readable.from(rows)
  source.on('error', (error) => lines.destroy(error))
  lines.on('close', () => source.destroy())
  return source.pipe(lines)
}

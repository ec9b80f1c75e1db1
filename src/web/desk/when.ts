import { dateFormat } from '../../base/formats.ts'

/** A day as the customer's papers name it. */
export const dayWords = (at: number, language: string): string =>
  dateFormat(language, { dateStyle: 'medium', timeZone: 'UTC' }).format(at)

/** A moment by the workshop's own clock. */
export const momentWords = (at: number, language: string): string =>
  dateFormat(language, { dateStyle: 'medium', timeStyle: 'short' }).format(at)

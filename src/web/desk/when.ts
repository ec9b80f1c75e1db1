/** A day as the customer's papers name it. */
export const dayWords = (at: number, language: string): string =>
  new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeZone: 'UTC' }).format(at)

/** A moment by the workshop's own clock. */
export const momentWords = (at: number, language: string): string =>
  new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short' }).format(at)

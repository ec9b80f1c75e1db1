/*
 * The system's formats, each made once: one takes longer to make than to use, and holds up to 28 kB that
 * JavaScript's memory does not count. Locales are those of the shop's languages.
 */

function remembered<Options, Format>(make: (locale: string, options: Options) => Format) {
  const made = new Map<string, Format>()
  return (locale: string, options: Options): Format => {
    const key = `${locale} ${JSON.stringify(options)}`
    const format = made.get(key) ?? make(locale, options)
    made.set(key, format)
    return format
  }
}

export const numberFormat = remembered(
  (locale, options: Intl.NumberFormatOptions) => new Intl.NumberFormat(locale, options),
)

export const dateFormat = remembered(
  (locale, options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat(locale, options),
)

export const namesOfLanguages = remembered(
  (locale, options: Omit<Intl.DisplayNamesOptions, 'type'>) =>
    new Intl.DisplayNames([locale], { ...options, type: 'language' }),
)

/** A sample of the text format. */
export interface Sample {
  readonly name: string
  readonly labels: Readonly<Record<string, string>>
  readonly value: number
}

const line =
  /^([a-zA-Z_:][a-zA-Z0-9_:]*)(?:\{((?:[a-zA-Z_][a-zA-Z0-9_]*="(?:[^"\\\n]|\\["\\n])*",?)*)\})? ([Nn][Aa][Nn]|[+-]Inf|[-+]?\d+(?:\.\d+)?(?:e[-+]?\d+)?)(?: -?\d+)?$/

const number = (text: string): number =>
  text === '+Inf'
    ? Number.POSITIVE_INFINITY
    : text === '-Inf'
      ? Number.NEGATIVE_INFINITY
      : Number(text)

const types = ['counter', 'gauge', 'histogram', 'summary', 'untyped']

/** The metric a sample belongs to: a histogram's and a summary's have three names. */
const family = (name: string, typed: ReadonlyMap<string, string>): string => {
  if (typed.has(name)) return name
  const base = name.replace(/_(?:bucket|sum|count)$/, '')
  return ['histogram', 'summary'].includes(typed.get(base) ?? '') ? base : name
}

/**
 * Reads Prometheus' text format, version 0.0.4, after its description ("Exposition formats", prometheus.io), written
 * without a look at what writes it here. A value is "a float represented as required by Go's ParseFloat() function",
 * which takes NaN in letters of either case. Throws at any line that is none, a sample without a TYPE before it, and a
 * sample that is there twice.
 */
export function promText(text: string): Sample[] {
  if (!text.endsWith('\n')) throw new Error('the last line does not end')
  const samples: Sample[] = []
  const typed = new Map<string, string>()
  const seen = new Set<string>()
  for (const one of text.slice(0, -1).split('\n')) {
    if (one === '' || /^# HELP [a-zA-Z_:][a-zA-Z0-9_:]* .+$/.test(one)) continue
    const [, of, type] = /^# TYPE ([a-zA-Z_:][a-zA-Z0-9_:]*) (\w+)$/.exec(one) ?? []
    if (of && type && types.includes(type) && !typed.has(of)) {
      typed.set(of, type)
      continue
    }
    const [, name, labels = '', value] = line.exec(one) ?? []
    if (!name || value === undefined) throw new Error(`no line of the format: ${one}`)
    if (!typed.has(family(name, typed))) throw new Error(`a sample before its TYPE: ${one}`)
    if (seen.has(`${name}{${labels}`)) throw new Error(`a sample twice: ${one}`)
    seen.add(`${name}{${labels}`)
    const pairs = [...labels.matchAll(/([a-zA-Z_]\w*)="((?:[^"\\]|\\.)*)"/g)]
    samples.push({
      name,
      labels: Object.fromEntries(
        pairs.map(([, key, said]) => [
          key!,
          said!.replace(/\\(.)/g, (_, c) => (c === 'n' ? '\n' : c)),
        ]),
      ),
      value: number(value),
    })
  }
  return samples
}

import type { Flag, Grading } from '../garment/grade.ts'
import type { Language } from '../words/words.ts'

/** A flag as a person reads it. */
export interface FlagWords {
  readonly severity: 'note' | 'care' | 'stop'
  readonly message: string
  /** What to do about it; null: nothing. */
  readonly next: string | null
}

const severityOf = (flag: Flag): FlagWords['severity'] =>
  flag.severity === 'eyes' || flag.severity === 'home' ? 'stop' : flag.severity

/** The reason of a garment that is fit for a quilt, though not for the one that was wished for. */
const misfit = 'not-for-the-layout'

/** What to do about a reason of a garment, and which kinds of quilt it suits instead; null: nothing. */
export function nextOf(
  { code }: Flag,
  { layouts }: Pick<Grading, 'layouts'>,
  { say, locale }: Language,
): string | null {
  const suits = layouts.filter(({ fits }) => fits)
  if (code === misfit && suits.length > 0) {
    const names = suits.map(({ layout }) => say(`trade.layouts.${layout}.name`))
    return say('tag.suits', {
      layouts: new Intl.ListFormat(locale, { type: 'disjunction' }).format(names),
    })
  }
  return say(`trade.flags.${code}.next`) || null
}

/**
 * The flags of a garment that one reader should see, in that reader's language, the gravest first. The next step of
 * a code in `said` is told elsewhere.
 */
export function flagWords(
  { flags, layouts }: Pick<Grading, 'flags' | 'layouts'>,
  reader: 'customer' | 'staff' | 'maker',
  language: Language,
  said: ReadonlySet<string> = new Set(),
): FlagWords[] {
  const order = ['stop', 'care', 'note']
  return flags
    .filter((flag) => flag.for.includes(reader))
    .map((flag) => ({
      severity: severityOf(flag),
      message: language.say(`trade.flags.${flag.code}.message`),
      next: said.has(flag.code) ? null : nextOf(flag, { layouts }, language),
    }))
    .sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))
}

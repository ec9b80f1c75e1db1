import type { Flag } from '../garment/grade.ts'
import type { Say } from '../words/words.ts'

/** A flag as a person reads it. */
export interface FlagWords {
  readonly severity: 'note' | 'care' | 'stop'
  readonly message: string
  /** What to do about it; null: nothing. */
  readonly next: string | null
}

const severityOf = (flag: Flag): FlagWords['severity'] =>
  flag.severity === 'eyes' || flag.severity === 'home' ? 'stop' : flag.severity

/**
 * The flags that one reader should see, in that reader's language, the gravest first. The next step of
 * a code in `said` is told elsewhere.
 */
export function flagWords(
  flags: readonly Flag[],
  reader: 'customer' | 'staff' | 'maker',
  say: Say,
  said: ReadonlySet<string> = new Set(),
): FlagWords[] {
  const order = ['stop', 'care', 'note']
  return flags
    .filter((flag) => flag.for.includes(reader))
    .map((flag) => ({
      severity: severityOf(flag),
      message: say(`trade.flags.${flag.code}.message`),
      next: said.has(flag.code) ? null : say(`trade.flags.${flag.code}.next`) || null,
    }))
    .sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))
}

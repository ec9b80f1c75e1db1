import {
  type Count,
  type Half,
  halves,
  percent,
  phrasesOf,
  score,
} from '../garment/words/phrases.ts'

const tell = (name: string, count: Count): void => {
  const { filled, right, present, found, askedRight } = count
  process.stdout.write(
    `  ${name.padEnd(12)} right ${percent(right, filled).toFixed(1)} % of ${filled} filled, found ${percent(found, present).toFixed(1)} % of ${present} said (${askedRight} more in doubt)\n`,
  )
}

/** `words [held-out|development]`: how well customers' own lines are read, by fact and by language; with `faults` each fault too. */
export async function benchWords(given: readonly string[]): Promise<void> {
  const chosen = halves.filter(
    (half) =>
      !given.some((one) => (halves as readonly string[]).includes(one)) || given.includes(half),
  )
  for (const half of chosen) tellHalf(half, given.includes('faults'))
}

function tellHalf(half: Half, withFaults: boolean): void {
  const phrases = phrasesOf(half)
  const { all, byFact, byLanguage, wrong, missed } = score(phrases)
  process.stdout.write(`${half}: ${phrases.length} lines\n`)
  tell('all', all)
  for (const [language, count] of byLanguage) tell(language, count)
  for (const [fact, count] of [...byFact].sort(([a], [b]) => a.localeCompare(b))) tell(fact, count)
  if (!withFaults) return
  for (const one of wrong) process.stdout.write(`  wrong  ${one}\n`)
  for (const one of missed) process.stdout.write(`  missed ${one}\n`)
}

const minutes = (n: number): number => n * 60 * 1000
const hours = (n: number): number => minutes(60 * n)

/** Pauses after the first, second … try that failed, ms; the last one again and again. */
const waits = [
  minutes(1),
  minutes(5),
  minutes(15),
  minutes(30),
  hours(1),
  hours(2),
  hours(4),
  hours(6),
] as const

/**
 * A mail that could not be sent is tried for so long, ms: RFC 5321, 4.5.4.1, has a mail server try for four
 * to five days, with half an hour and more between tries once the first have failed.
 */
export const triedFor = hours(4 * 24)

/** When to try again after `tries` tries that failed; null: it is given up. */
export function nextTry({
  tries,
  since,
  now,
}: {
  tries: number
  since: number
  now: number
}): number | null {
  const at = now + waits[Math.min(tries, waits.length) - 1]!
  return at - since > triedFor ? null : at
}

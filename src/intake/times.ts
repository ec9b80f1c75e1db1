import type { Entry } from './rows.ts'

/** When each question was last answered, ms UTC, by item and question; 0 is the pile itself. */
export type Times = ReadonlyMap<number, ReadonlyMap<string, number>>

export const noTimes: ReadonlyMap<string, number> = new Map()

export function timesOf(entries: readonly Entry[]): Times {
  const times = new Map<number, Map<string, number>>()
  for (const { act, at } of entries) {
    if (act.act !== 'answer') continue
    const own = times.get(act.item)
    if (own) own.set(act.question, at)
    else times.set(act.item, new Map([[act.question, at]]))
  }
  return times
}

/** The same with one entry more; `times` stays as it was. */
export function timesOn(times: Times, { act, at }: Entry): Times {
  if (act.act !== 'answer') return times
  const own = new Map(times.get(act.item)).set(act.question, at)
  return new Map(times).set(act.item, own)
}

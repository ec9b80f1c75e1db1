import { likelihoodOnLabel } from './label/likely.ts'
import { type PicturedLine, readLines } from './label-lines.ts'
import type { LabelReading } from './reading.ts'

/** A line that was read from a picture, and what it would say with another number in one place. */
export interface MootLine extends PicturedLine {
  readonly others: readonly PicturedLine[]
}

/**
 * So many other lines are tried at most, of long labels fewer: each try reads all lines again. So many are taken
 * one after another.
 */
const most = { tried: 24, linesRead: 800, taken: 4 }

/**
 * The lines, each with the number with which the shares add up, where the likeliest one does not let them: one
 * after another, that which leaves the least in doubt. It stays as unsure as it was seen. Never throws.
 */
export function settle(lines: readonly MootLine[]): PicturedLine[] {
  let settled = lines.map(({ text, sure }): PicturedLine => ({ text, sure }))
  let doubt = doubtOf(readLines(settled))
  let others = lines
    .flatMap(({ others }, at) => others.map((line) => ({ line, at })))
    .sort((a, b) => b.line.sure - a.line.sure)
    .slice(0, Math.min(most.tried, Math.ceil(most.linesRead / lines.length)))
  for (let n = 0; n < most.taken && doubt > 0; n += 1) {
    const tries = others.map((other) => {
      const tried = settled.with(other.at, other.line)
      return { other, tried, doubt: doubtOf(readLines(tried)) }
    })
    const before = doubt
    others = tries.filter((one) => one.doubt <= before).map(({ other }) => other)
    const best = tries.reduce((a, b) => (b.doubt < a.doubt ? b : a), { tried: settled, doubt })
    if (best.doubt === doubt) break
    settled = best.tried
    doubt = best.doubt
  }
  return settled
}

/** No shares, or some that do not add up, weigh more than any other doubts. */
const notWhole = 10

/** How much these lines leave in doubt: nothing at 0, shares that do not add up most. Never throws. */
const doubt = (lines: readonly PicturedLine[]): number => doubtOf(readLines(lines))

function doubtOf({ blocks, problems }: LabelReading): number {
  const ofShares = problems.filter(({ code }) => code !== 'iron_unclear').length
  return ofShares + (areWhole(blocks) ? 0 : notWhole)
}

const areWhole = (blocks: LabelReading['blocks']): boolean =>
  blocks.length > 0 && blocks.every(({ total }) => total === 100)

/** Whether these lines tell shares, and each part's make a whole. Never throws. */
const isWhole = (lines: readonly PicturedLine[]): boolean => areWhole(readLines(lines).blocks)

/** What is known of the words that labels print, for reading them off a picture. */
export const labelSense = { weigh: likelihoodOnLabel, settle, doubt, isWhole }

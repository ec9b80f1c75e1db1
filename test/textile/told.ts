import type { LabelReading } from '../../src/textile/reading.ts'

/** A reading's make-up as the cases write it: "part: share fibre, …" parted by bars. */
export const blocksTold = ({ blocks }: LabelReading): string =>
  blocks
    .map(({ section, fibres }) => {
      const shares = fibres.map(({ fibre, percent }) => `${percent} ${fibre}`).join(', ')
      return section === null ? shares : `${section}: ${shares}`
    })
    .join(' | ')

/** A reading's ironing line as the cases write it: the level, then s, p and r. */
export const ironTold = ({ iron }: LabelReading): string =>
  [
    iron.level ?? '',
    ...(iron.noSteam ? ['s'] : []),
    ...(iron.notOnPrint ? ['p'] : []),
    ...(iron.wrongSide ? ['r'] : []),
  ].join(' ')

import type { Chance } from '../help/chance.ts'
import { apart, hexOfLch, labOfHex, moved } from './light.ts'

/** A colour that a person sees on a cloth; where it is `quiet` only just. */
export function inkOn(chance: Chance, cloth: string, quiet: boolean): string {
  const from = labOfHex(cloth)
  for (;;) {
    const ink = quiet
      ? moved(cloth, {
          l: (from[0] > 60 ? -1 : from[0] < 25 ? 1 : chance.one([-1, 1])) * chance.real(12, 19),
          c: chance.real(-3, 5),
        })
      : chance.happens(0.4)
        ? from[0] > 55
          ? hexOfLch(12, 3, 270)
          : hexOfLch(95, 1, 90)
        : hexOfLch(chance.real(15, 92), chance.real(10, 75), chance.real(0, 360))
    if (apart(labOfHex(ink), from) > (quiet ? 11 : 30)) return ink
  }
}

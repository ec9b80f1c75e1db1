import type { Chance } from '../help/chance.ts'
import { inkOn } from './ink.ts'
import { codesOf } from './light.ts'
import type { Pattern } from './print.ts'

/** Bands of colours, mm, that begin again after their sum; the first colour is the cloth's. */
interface Sett {
  readonly bands: readonly { readonly colour: number; readonly wide: number }[]
}

export type StripeKind = 'across' | 'along' | 'diagonal' | 'gingham' | 'tartan' | 'pane'

const lengthOf = ({ bands }: Sett): number => bands.reduce((sum, { wide }) => sum + wide, 0)

function sett(chance: Chance, kind: StripeKind, inks: number): Sett {
  const band = (colour: number, wide: number) => ({ colour, wide })
  const unit = Math.exp(chance.real(Math.log(4), Math.log(42)))
  if (kind === 'gingham') return { bands: [band(0, unit * 0.7), band(1, unit * 0.7)] }
  if (kind === 'pane') {
    const line = chance.real(1.5, 5)
    const gap = chance.real(18, 75)
    return {
      bands: Array.from({ length: inks }, (_, n) => [band(0, gap), band(n + 1, line)]).flat(),
    }
  }
  if (kind === 'tartan') {
    const wide = chance.real(14, 50)
    const half = Array.from({ length: chance.whole(2, 4) }, (_, n) => [
      band(n % (inks + 1), wide * chance.real(0.4, 1.2)),
      band(chance.whole(0, inks), wide * chance.real(0.06, 0.4)),
    ]).flat()
    return { bands: [...half, ...[...half].reverse()] }
  }
  const even = chance.happens(0.45)
  return {
    bands: Array.from({ length: inks }, (_, n) => [
      band(0, even ? unit : unit * chance.real(0.6, 3.2)),
      band(n + 1, even ? unit : unit * chance.real(0.4, 1.4)),
    ]).flat(),
  }
}

/** Which colour lies at each pixel of so many along a sett, and how much of the one before it shows. */
function laid(
  { bands }: Sett,
  pixels: number,
): { first: Uint8Array; second: Uint8Array; part: Float32Array } {
  const whole = lengthOf({ bands })
  const first = new Uint8Array(pixels)
  const second = new Uint8Array(pixels)
  const part = new Float32Array(pixels)
  const step = whole / pixels
  let at = 0
  bands.forEach(({ colour, wide }, n) => {
    const next = bands[(n + 1) % bands.length]!.colour
    const end = at + wide
    for (let px = Math.ceil(at / step - 0.001); px < pixels && px * step < end; px++) {
      first[px] = colour
      second[px] = next
      part[px] = Math.max(0, Math.min(1, ((px + 1) * step - end) / step))
    }
    at = end
  })
  return { first, second, part }
}

/**
 * Stripes or checks on a cloth, `scale` pixels for a millimetre. Zones are the pairs of colours that
 * cross, 0 where the cloth's own lies alone.
 */
export function drawStripes(
  chance: Chance,
  colour: string,
  scale: number,
  kind: StripeKind,
): Pattern {
  const crossed = kind === 'gingham' || kind === 'tartan' || kind === 'pane'
  const count = kind === 'gingham' ? 1 : kind === 'tartan' ? chance.whole(1, 4) : chance.whole(1, 3)
  const inks: string[] = []
  while (inks.length < count) inks.push(inkOn(chance, colour, chance.happens(0.16)))
  const colours = [colour, ...inks].map(codesOf)
  const run = sett(chance, kind, count)
  const long = lengthOf(run)
  const pixels = Math.max(4, Math.round(long * scale))
  const { first, second, part } = laid(run, pixels)
  const wide = crossed ? pixels : 1
  const data = new Uint8Array(wide * pixels * 4)
  const zones = new Uint8Array(wide * pixels)
  const mixed = (at: number, c: number): number =>
    colours[first[at]!]![c]! * (1 - part[at]!) + colours[second[at]!]![c]! * part[at]!
  for (let y = 0; y < pixels; y++)
    for (let x = 0; x < wide; x++) {
      const n = y * wide + x
      const weft = first[y]!
      const warp = crossed ? first[x]! : weft
      for (let c = 0; c < 3; c++) {
        // A line of a pane lies on the cloth; threads of a tartan and of a gingham lie over and under.
        const value =
          kind === 'pane' && warp !== weft
            ? warp === 0
              ? mixed(y, c)
              : mixed(x, c)
            : crossed
              ? (mixed(y, c) + mixed(x, c)) / 2
              : mixed(y, c)
        data[n * 4 + c] = Math.round(value)
      }
      data[n * 4 + 3] = 255
      const edge = part[y]! > 0.02 || (crossed && part[x]! > 0.02)
      const low = Math.min(warp, weft)
      const high = Math.max(warp, weft)
      zones[n] = edge ? 255 : kind === 'pane' && low === 0 ? high : low * colours.length + high
    }
  const turn = {
    across: 0,
    along: Math.PI / 2,
    diagonal: chance.one([-1, 1]) * chance.real(0.6, 0.95),
  }
  return {
    tile: { data, width: wide, height: pixels },
    zones,
    wide: crossed ? long : 1,
    tall: long,
    turn:
      (crossed ? (chance.happens(0.1) ? Math.PI / 4 : 0) : turn[kind as 'across']) +
      chance.real(-0.015, 0.015),
  }
}

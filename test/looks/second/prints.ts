import type { PrintClass } from '../print.ts'
import type { Chance } from './chance.ts'
import { motif } from './motif.ts'
import type { Kind } from './shapes.ts'
import { placed, repeated } from './svg.ts'

/** What is printed on a garment or woven into it: SVG in parts of the garment about its middle. */
export function printOf(
  chance: Chance,
  print: PrintClass,
  kind: Kind,
  inks: readonly string[],
): string {
  switch (print) {
    case 'solid':
      return ''
    case 'single':
      return single(chance, kind, inks)
    case 'allover':
      return allover(chance, inks)
    case 'stripe-check':
      return stripes(chance, inks)
  }
}

/** Of trousers: where the right leg has its middle, and the widest that a picture on it is. */
const leg = { x: 0.13, width: 0.14 }
/** How high a small mark on the chest stands. */
const chestY = -0.22

function single(chance: Chance, kind: Kind, inks: readonly string[]): string {
  const onLeg = kind === 'pants'
  const onChest = chance.happens(0.15)
  const width = onChest ? chance.real(0.06, 0.1) : chance.real(0.18, 0.4)
  const height = width * chance.real(0.5, 1.3)
  const x = onChest ? chance.real(0.05, 0.1) : chance.real(-0.02, 0.02)
  const y = onLeg ? chance.real(-0.3, 0.2) : onChest ? chestY : chance.real(-0.2, 0.1)
  const at = onLeg ? { x: leg.x, width: Math.min(width, leg.width) } : { x, width }
  return placed(`translate(${at.x} ${y}) scale(${at.width} ${height})`, motif(chance, inks))
}

/** How far motifs are strewn from the middle: further than any outline goes. */
const strewnTo = 0.6

function allover(chance: Chance, inks: readonly string[]): string {
  const pitch = chance.real(0.05, 0.16)
  const motifs = [motif(chance, inks), motif(chance, inks)]
  const loose = chance.happens(0.5)
  const play = loose ? 0.3 : 0
  const astray = () => chance.real(-play, play) * pitch
  return repeated(-strewnTo, strewnTo, pitch, (y, row) => {
    const indent = row % 2 === 0 ? pitch / 2 : 0
    return repeated(-strewnTo + indent, strewnTo, pitch, (x) => {
      const place = `translate(${x + astray()} ${y + astray()})`
      const turn = `rotate(${loose ? chance.real(0, 360) : 0})`
      const size = `scale(${pitch * chance.real(0.6, 0.9)})`
      return placed(`${place} ${turn} ${size}`, chance.one(motifs))
    })
  })
}

/** Which way lines run. Checks have both; some of all but the last are turned on the cloth. */
const layouts = [
  { across: true, along: false, turns: true },
  { across: false, along: true, turns: true },
  { across: true, along: true, turns: true },
  { across: true, along: true, turns: false },
] as const

/** How far lines go from the middle, so that they fill a garment turned too, and how long they are. */
const linesTo = 0.9
const lineEnd = 1

function stripes(chance: Chance, inks: readonly string[]): string {
  const pitch = chance.real(0.02, 0.14)
  const { across, along, turns } = chance.one(layouts)
  const turn = turns && chance.happens(0.1) ? 45 : 0
  const thick = pitch * chance.real(0.15, 0.6)
  const acrossInk = chance.one(inks)
  const alongInk = chance.one(inks)
  // Where the lines of a check cross, both are seen.
  const opacity = across && along ? 0.6 : 1
  const long = 2 * lineEnd
  const lines = repeated(-linesTo, linesTo, pitch, (at) =>
    [
      across &&
        `<rect x="${-lineEnd}" y="${at}" width="${long}" height="${thick}" fill="${acrossInk}" opacity="${opacity}"/>`,
      along &&
        `<rect x="${at}" y="${-lineEnd}" width="${thick}" height="${long}" fill="${alongInk}" opacity="${opacity}"/>`,
    ]
      .filter(Boolean)
      .join(''),
  )
  return placed(`rotate(${turn})`, lines)
}

import type { Look } from './look.ts'

/** Cloth as CSS: declarations for the box that it fills, in em of the label's letters. */

const tile = (size: number, inside: string): string => {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}">${inside}</svg>`
  return `url("data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}")`.replaceAll(
    '"',
    "'",
  )
}

/** Grey grain that joins at its edges; `often` is its frequency along and across, 1/px. */
const grain = (often: string, seed: number, strength: number): string =>
  tile(
    256,
    `<filter id="n" x="0" y="0" width="100%" height="100%">
      <feTurbulence type="fractalNoise" baseFrequency="${often}" numOctaves="2" seed="${seed % 1000}" stitchTiles="stitch"/>
      <feColorMatrix values="1 0 0 0 0 1 0 0 0 0 1 0 0 0 0 0 0 0 0 ${strength}"/>
    </filter><rect width="256" height="256" filter="url(#n)"/>`,
  )

const thread = (turn: number, dark: number, from: number, to: number): string =>
  `repeating-linear-gradient(${turn}deg, rgb(0 0 0 / ${dark}) 0 ${from}em, transparent ${from}em ${to}em)`

const sheen = (turn: number, light: number): string =>
  `linear-gradient(${turn}deg, transparent 8%, rgb(255 255 255 / ${light}) 30%, transparent 52%, rgb(0 0 0 / ${light / 3}) 70%, transparent 90%)`

const knit = tile(
  24,
  `<path d="M1 2 L12 14 L23 2 M1 14 L12 26 L23 14 M1 -10 L12 2 L23 -10" fill="none" stroke="#000" stroke-opacity=".38" stroke-width="3.4"/>
   <path d="M2 6 L12 17 L22 6 M2 18 L12 29 L22 18 M2 -6 L12 5 L22 -6" fill="none" stroke="#fff" stroke-opacity=".2" stroke-width="2.2"/>`,
)

/** Long soft folds of the garment. */
const folds =
  'linear-gradient(112deg, rgb(0 0 0 / .3), transparent 22%, rgb(255 255 255 / .1) 38%, rgb(0 0 0 / .22) 55%, transparent 72%, rgb(0 0 0 / .28))'

const cloths: Readonly<Record<Look['cloth']['is'], readonly string[]>> = {
  knit: [`${knit} 0 0 / .62em .62em`],
  twill: [thread(45, 0.2, 0.07, 0.17), grain('.6', 3, 0.25)],
  denim: [thread(60, 0.3, 0.06, 0.14), thread(0, 0.1, 0.05, 0.1), grain('.3 .9', 5, 0.35)],
  plain: [thread(0, 0.16, 0.05, 0.11), thread(90, 0.16, 0.05, 0.11), grain('.5', 7, 0.2)],
  fleece: [grain('.045', 11, 0.5), grain('.4', 13, 0.4)],
  checks: [
    'repeating-linear-gradient(0deg, rgb(255 255 255 / .22) 0 1.6em, transparent 1.6em 5em)',
    'repeating-linear-gradient(90deg, rgb(0 0 0 / .3) 0 1.6em, transparent 1.6em 5em)',
    thread(0, 0.14, 0.05, 0.11),
  ],
}

export const clothOf = ({ is, colour }: Look['cloth']): string =>
  `background: ${[folds, ...cloths[is]].join(', ')}, ${colour}`

/** What the label itself is woven of. */
export function groundOf({ ground, seed, threads }: Look, colour: string): string {
  const fine = grain('.7', seed, 0.07)
  const layers = {
    nylon: [fine],
    satin: [sheen(96, 0.75), thread(0, 0.05, 0.03, 0.08), fine],
    woven: [thread(0, 0.1, 0.05, 0.12), thread(90, 0.09, 0.05, 0.12), grain('.15 .6', seed, 0.12)],
    cream: [thread(90, 0.06, 0.04, 0.1), grain('.3', seed, 0.1)],
    grey: [thread(0, 0.07, 0.04, 0.1), fine],
    black: [sheen(84, 0.12), thread(0, 0.3, 0.04, 0.1), grain('.5', seed, 0.12)],
  }[ground]
  const woven = threads ? [thread(0, 0.22, 0.035, 0.11), thread(90, 0.1, 0.03, 0.15)] : []
  return `background: ${[...woven, ...layers].join(', ')}, ${colour}`
}

/** Letters rubbed off in places. */
export const wornMask = (seed: number): string => {
  const rubbed = tile(
    256,
    `<filter id="n" x="0" y="0" width="100%" height="100%">
      <feTurbulence type="fractalNoise" baseFrequency=".09" numOctaves="3" seed="${seed % 1000}" stitchTiles="stitch"/>
      <feColorMatrix values="0 0 0 0 0 0 0 0 0 0 0 0 0 0 0 5 0 0 0 -1.35"/>
    </filter><rect width="256" height="256" filter="url(#n)"/>`,
  )
  return `mask: ${rubbed};`
}

/** Letters made of short stitches, each row set off against the one before. */
export const threadMask = (): string => {
  const stitches = tile(
    40,
    `<g fill="#000"><rect x="1" y="1" width="37" height="15" rx="7"/>
     <rect x="-19" y="21" width="37" height="15" rx="7"/><rect x="21" y="21" width="37" height="15" rx="7"/></g>`,
  )
  return `mask: ${stitches} 0 0 / .24em .2em;`
}

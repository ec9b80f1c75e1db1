import type { Chance } from './chance.ts'
import { anyColour } from './colours.ts'
import type { Kind } from './shapes.ts'
import { repeated } from './svg.ts'

/** What a garment has that is no print: SVG in parts of the garment about its middle. */
export function seamsOf(chance: Chance, kind: Kind): string {
  const stitched = `stroke="black" stroke-opacity="${chance.real(0.12, 0.4)}" fill="none" stroke-width=".004"`
  const seam = (path: string) => `<path d="${path}" ${stitched}/>`
  return [
    kind === 'pants' ? flyAndPockets(seam) : neckAndArmholes(chance, seam),
    chance.happens(0.2) ? placket(chance, seam) : '',
    chance.happens(0.15) && kind !== 'pants' ? seam('M.06 -.22h.12v.12q-.06 .03 -.12 0z') : '',
    kind === 'hood' ? pouchAndCords(seam) : '',
  ].join('')
}

type Seam = (path: string) => string

const flyAndPockets = (seam: Seam): string =>
  seam('M0 -.5V-.1M-.24 -.45H.24') + seam('M.05 -.44q.05 .1 .16 .1M-.05 -.44q-.05 .1 -.16 .1')

/** The neck's inside, the hem, and where the sleeves are set in. */
const neckAndArmholes = (chance: Chance, seam: Seam): string =>
  `<ellipse cx="0" cy="-.44" rx=".1" ry=".05" fill="black" fill-opacity="${chance.real(0.1, 0.4)}"/>` +
  seam('M-.27 .45H.27M.22 -.42Q.26 -.3 .27 -.18M-.22 -.42Q-.26 -.3 -.27 -.18')

function placket(chance: Chance, seam: Seam): string {
  const button = anyColour(chance)
  return (
    seam('M-.015 -.4V.5M.02 -.4V.5') +
    repeated(-0.35, 0.4, 0.12, (y) => `<circle cx="0" cy="${y}" r=".009" fill="${button}"/>`)
  )
}

const pouchAndCords = (seam: Seam): string =>
  seam('M-.16 .12L-.12 .1H.12L.16 .12L.2 .32H-.2Z') +
  '<path d="M-.04 -.36V-.2M.04 -.36V-.22" stroke="white" stroke-width=".008"/>'

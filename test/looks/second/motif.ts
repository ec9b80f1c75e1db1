import type { Chance } from './chance.ts'

/** Where a shape has its middle and how far it reaches from there, in parts of a motif's side. */
interface Spot {
  readonly x: number
  readonly y: number
  readonly reach: number
}

type Shape = (chance: Chance, ink: string, spot: Spot) => string

const disc: Shape = (_, ink, { x, y, reach }) =>
  `<circle cx="${x}" cy="${y}" r="${reach * 0.8}" fill="${ink}"/>`

const bar: Shape = (chance, ink, { x, y, reach }) =>
  `<rect x="${x - reach}" y="${y - reach * 0.7}" width="${2 * reach}" height="${1.4 * reach}" fill="${ink}" transform="rotate(${chance.real(0, 90)} ${x} ${y})"/>`

const star: Shape = (chance, ink, { x, y, reach }) => {
  const tips = chance.whole(3, 8)
  const points = Array.from({ length: 2 * tips }, (_, n) => {
    const towards = (Math.PI * n) / tips
    const far = n % 2 ? reach * 0.45 : reach
    return `${x + far * Math.cos(towards)},${y + far * Math.sin(towards)}`
  })
  return `<polygon points="${points.join(' ')}" fill="${ink}"/>`
}

const ring: Shape = (chance, ink, { x, y, reach }) =>
  `<ellipse cx="${x}" cy="${y}" rx="${reach}" ry="${reach * 0.5}" fill="none" stroke="${ink}" stroke-width="${chance.real(0.03, 0.08)}"/>`

const swash: Shape = (chance, ink, { x, y, reach }) =>
  `<path d="M${x - reach} ${y} q${reach} ${-reach * 2} ${2 * reach} 0 t${reach * 0.2} ${reach}" stroke="${ink}" stroke-width="${chance.real(0.03, 0.09)}" fill="none"/>`

const shapes = [disc, bar, star, ring, swash]

function oneShape(chance: Chance, inks: readonly string[]): string {
  const ink = chance.one(inks)
  const spot = {
    x: chance.real(-0.3, 0.3),
    y: chance.real(-0.3, 0.3),
    reach: chance.real(0.12, 0.3),
  }
  return chance.one(shapes)(chance, ink, spot)
}

const words = ['RIVERSIDE', 'SUMMER 98', 'LAKE CAMP', 'HELLO', 'TEAM 12', 'OAK HILL']

const lettering = (chance: Chance, inks: readonly string[]): string =>
  `<text x="0" y="${chance.real(0.3, 0.48)}" font-size="${chance.real(0.12, 0.22)}" font-family="sans-serif" font-weight="bold" text-anchor="middle" textLength="${chance.real(0.7, 0.95)}" lengthAdjust="spacingAndGlyphs" fill="${chance.one(inks)}">${chance.one(words)}</text>`

/** A few shapes over each other and at times a word: SVG, about 1 wide and high, about its middle. */
export function motif(chance: Chance, inks: readonly string[]): string {
  const drawn = Array.from({ length: chance.whole(2, 6) }, () => oneShape(chance, inks)).join('')
  return chance.happens(0.4) ? drawn + lettering(chance, inks) : drawn
}

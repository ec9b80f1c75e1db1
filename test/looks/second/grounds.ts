import type { Chance } from './chance.ts'
import { groundColour } from './colours.ts'
import { repeated, type Size } from './svg.ts'

/** What a garment lies on: SVG in px of the picture. */
export interface Ground {
  readonly svg: string
  /** As rough as a carpet. */
  readonly rough: boolean
}

const kinds = ['plain', 'boards', 'checks', 'tiles', 'edge', 'carpet'] as const

/** So far patterns go on, px: beyond the longer side of every picture. */
const patternEnd = 1300

export function groundOf(chance: Chance, size: Size): Ground {
  const kind = chance.one(kinds)
  const first = groundColour(chance)
  const second = groundColour(chance)
  const plain = `<rect width="${size.width}" height="${size.height}" fill="${first}"/>`
  const pattern = {
    plain: () => '',
    boards: () => boards(chance, size),
    checks: () => checks(chance, size, second),
    tiles: () => tiles(chance, size),
    edge: () => (chance.happens(0.5) ? edge(chance, size, second) : ''),
    carpet: () => '',
  }[kind]
  return { svg: plain + pattern(), rough: kind === 'carpet' }
}

/** Across the whole picture, from top to bottom where it is upright and else from side to side. */
const strip = (size: Size, upright: boolean, at: number, thick: number, paint: string): string =>
  upright
    ? `<rect x="${at}" width="${thick}" height="${size.height}" ${paint}/>`
    : `<rect y="${at}" width="${size.width}" height="${thick}" ${paint}/>`

/** Between two boards, px. */
const gap = 3
/** To a board. */
const grainLines = 12

function boards(chance: Chance, size: Size): string {
  const wide = chance.real(60, 200)
  const upright = chance.happens(0.5)
  return repeated(0, patternEnd, wide, (at) => {
    const darker = chance.real(0, 0.25)
    const board = strip(size, upright, at, wide - gap, `fill="black" opacity="${darker}"`)
    const between = strip(size, upright, at + wide - gap, gap, 'fill="black" opacity=".5"')
    const grain = Array.from({ length: grainLines }, () =>
      grainLine(chance, size, upright, at, wide),
    )
    return [board, between, ...grain].join('')
  })
}

/** One line in the wood of a board that begins `at` and is so wide, px. */
function grainLine(
  chance: Chance,
  { width, height }: Size,
  upright: boolean,
  at: number,
  wide: number,
): string {
  const dark = chance.real(0.03, 0.15)
  const ends = at + chance.real(0, wide)
  const middle = ends + chance.real(-6, 6)
  const path = upright
    ? `M${ends} 0Q${middle} ${height / 2} ${ends} ${height}`
    : `M0 ${ends}Q${width / 2} ${middle} ${width} ${ends}`
  return `<path d="${path}" stroke="black" stroke-opacity="${dark}" fill="none"/>`
}

function checks(chance: Chance, size: Size, colour: string): string {
  const pitch = chance.real(50, 160)
  const thick = pitch * chance.real(0.2, 0.5)
  const paint = `fill="${colour}" opacity=".4"`
  return repeated(
    0,
    patternEnd,
    pitch,
    (at) => strip(size, true, at, thick, paint) + strip(size, false, at, thick, paint),
  )
}

const tiles = (chance: Chance, { width, height }: Size): string =>
  repeated(
    0,
    patternEnd,
    chance.real(120, 300),
    (at) =>
      `<path d="M${at} 0V${height}M0 ${at}H${width}" stroke="black" stroke-opacity=".3" stroke-width="4"/>`,
  )

/** Low in the picture something else begins. */
const edge = (chance: Chance, { width, height }: Size, colour: string): string =>
  `<rect y="${height * chance.real(0.7, 0.85)}" width="${width}" height="${height}" fill="${colour}"/>`

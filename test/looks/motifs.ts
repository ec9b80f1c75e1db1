import hero from 'hero-patterns'
import sharp from 'sharp'
import type { Chance } from '../help/chance.ts'
import { type Art, resized } from './art.ts'
import { inked, seenOn } from './graphic.ts'
import { inkOn } from './ink.ts'
import { codeOfLight } from './light.ts'
import { zonesByColour } from './palette.ts'
import type { Pattern } from './print.ts'
import { fromSvg, type Raster, sample4 } from './raster.ts'

/** Patterns of the package that nobody would call stripes or checks, and that have no known name. */
const fabrics = [
  'anchorsAway',
  'bubbles',
  'endlessClouds',
  'eyes',
  'fallingTriangles',
  'floatingCogs',
  'flippedDiamonds',
  'fourPointStars',
  'glamorous',
  'happyIntersection',
  'hexagons',
  'hideout',
  'intersectingCircles',
  'jigsaw',
  'jupiter',
  'kiwi',
  'leaf',
  'moroccan',
  'morphingDiamonds',
  'overcast',
  'overlappingCircles',
  'overlappingHexagons',
  'pieFactory',
  'pixelDots',
  'plus',
  'polkaDots',
  'randomShapes',
  'roundedPlusConnected',
  'skulls',
  'topography',
  'yyy',
] as const

export async function drawAllover(
  chance: Chance,
  cloth: string,
  scale: number,
  art: Art,
  faint: boolean,
): Promise<Pattern> {
  return chance.happens(0.34)
    ? await fromFabric(chance, cloth, scale, faint)
    : await fromArt(chance, cloth, scale, art, faint)
}

async function fromFabric(
  chance: Chance,
  cloth: string,
  scale: number,
  faint: boolean,
): Promise<Pattern> {
  const ink = inkOn(chance, cloth, chance.happens(0.16) || faint)
  const url = hero[chance.one(fabrics)]!(ink, 1)
  const svg = decodeURIComponent(url.slice(url.indexOf(',') + 1, url.lastIndexOf("'")))
  const { width, height } = await sharp(Buffer.from(svg)).metadata()
  const long = Math.exp(chance.real(Math.log(28), Math.log(130)))
  const mm = long / Math.max(width, height)
  const wide = Math.max(6, Math.round(width * mm * scale))
  const tall = Math.max(6, Math.round(height * mm * scale))
  const tile = await fromSvg(svg, wide, tall)
  return {
    tile,
    zones: zonesByColour(tile),
    wide: wide / scale,
    tall: tall / scale,
    turn: chance.happens(0.15) ? chance.real(-0.8, 0.8) : 0,
  }
}

/** So many pictures in one ink that cannot be told from the cloth, and another ink is taken. */
const enoughTries = 40

/** Motifs from art, small and many or large and few, strewn on a tile that joins at its edges. */
async function fromArt(
  chance: Chance,
  cloth: string,
  scale: number,
  art: Art,
  faint: boolean,
): Promise<Pattern> {
  const quiet = chance.happens(0.12) || faint
  let one = chance.happens(0.3) || quiet ? inkOn(chance, cloth, quiet) : null
  const wanted = chance.whole(1, 3)
  const size = Math.exp(chance.real(Math.log(14), Math.log(110)))
  const motifs: Raster[] = []
  for (let tries = 1; motifs.length < wanted; tries += 1) {
    // Of two dark colours one may be far from the other and be hard to tell from it all the same.
    if (one && tries % enoughTries === 0) one = inkOn(chance, cloth, quiet)
    const picked = await art.pick(chance)
    const made = one ? inked(picked, one, chance.happens(0.6)) : picked
    const seen = seenOn(made, cloth, quiet ? 8 : 12)
    if (!seen || seen.share < 0.22 || seen.clear < (quiet ? 14 : 45)) continue
    const fit =
      (size * chance.real(0.75, 1.1) * scale) / Math.max(seen.raster.width, seen.raster.height)
    motifs.push(await resized(seen.raster, seen.raster.width * fit, seen.raster.height * fit))
  }
  // Sparse, or so dense that motifs lie over each other.
  const step = size * (chance.happens(0.25) ? chance.real(0.72, 0.95) : chance.real(1.05, 1.9))
  const columns = Math.max(2, Math.min(6, Math.round(260 / step)))
  const rows = columns
  const side = Math.max(16, Math.round(columns * step * scale))
  const tall = Math.max(16, Math.round(rows * step * chance.real(0.85, 1.1) * scale))
  const tile: Raster = { data: new Uint8Array(side * tall * 4), width: side, height: tall }
  const strewn = chance.happens(0.5)
  const turned = strewn ? Math.PI : chance.happens(0.5) ? 0 : 0.35
  const dropped = columns % 2 === 0 && chance.happens(0.7) ? 0.5 : 0
  const across = motifs.length > 2 ? 2 : 1
  for (let column = 0; column < columns; column++)
    for (let row = 0; row < rows; row++) {
      const jitter = () => (strewn ? chance.real(-0.16, 0.16) : 0)
      const x = ((column + 0.5 + jitter()) / columns) * side
      const y = ((row + 0.5 + (column % 2) * dropped + jitter()) / rows) * tall
      stamp(
        tile,
        motifs[(column + row * across) % motifs.length]!,
        x,
        y,
        chance.real(-turned, turned),
        chance.happens(0.3),
      )
    }
  return {
    tile,
    zones: zonesByColour(tile),
    wide: side / scale,
    tall: tall / scale,
    turn: 0,
  }
}

/** Lays a motif on a tile about a middle, over what is there already, across its edges too. */
function stamp(
  tile: Raster,
  motif: Raster,
  x: number,
  y: number,
  turn: number,
  flipped: boolean,
): void {
  const reach = Math.ceil(Math.hypot(motif.width, motif.height) / 2) + 1
  const cos = Math.cos(turn)
  const sin = Math.sin(turn)
  const over = new Float32Array(4)
  for (let dy = -reach; dy <= reach; dy++)
    for (let dx = -reach; dx <= reach; dx++) {
      const u = (dx * cos + dy * sin) * (flipped ? -1 : 1) + motif.width / 2
      const v = -dx * sin + dy * cos + motif.height / 2
      if (u < 0 || v < 0 || u > motif.width || v > motif.height) continue
      sample4(motif, u, v, false, over)
      const alpha = over[3]!
      if (alpha < 0.02) continue
      const column = ((Math.round(x + dx) % tile.width) + tile.width) % tile.width
      const row = ((Math.round(y + dy) % tile.height) + tile.height) % tile.height
      const at = (row * tile.width + column) * 4
      if (alpha < tile.data[at + 3]! / 255) continue
      for (let c = 0; c < 3; c++) tile.data[at + c] = codeOfLight(over[c]! / alpha)
      tile.data[at + 3] = Math.round(alpha * 255)
    }
}

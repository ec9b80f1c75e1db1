import sharp from 'sharp'
import type { Chance } from '../help/chance.ts'
import type { Cloth } from './cloth.ts'
import { labOfHex, moved } from './light.ts'
import type { Mark, Outline } from './outline.ts'
import { channelOf, fromSvg, type Raster } from './raster.ts'

/** A garment cut out and sewn, as rasters in its own frame. */
export interface Sewn {
  /** Pixels for a millimetre, and where the rasters begin, mm. */
  readonly scale: number
  readonly left: number
  readonly top: number
  /** How much of each pixel is garment. */
  readonly cover: Raster
  /** Which part lies there: its place in the outline's parts, and one more. */
  readonly parts: Uint8Array
  /** What is sewn on, four channels, over any print. */
  readonly marks: Raster
}

const beyond = 30

function markSvg(
  { path, ink, wide = 0 }: Mark,
  inks: Readonly<Record<'thread' | 'trim' | 'button' | 'cord', string>>,
): string {
  const line = (colour: string, opacity: number, width: number, more = '') =>
    `<path d="${path}" fill="none" stroke="${colour}" stroke-opacity="${opacity}" stroke-width="${width}" stroke-linejoin="round" ${more}/>`
  const area = (colour: string, more = '') => `<path d="${path}" fill="${colour}" ${more}/>`
  switch (ink) {
    case 'seam':
      return line('#000', 0.1, wide * 2.8) + line('#000', 0.24, wide * 0.5)
    case 'stitch':
      return (
        line('#000', 0.1, wide * 2.4) + line(inks.thread, 0.75, wide, 'stroke-dasharray="4.2 2"')
      )
    case 'lap':
      return (
        line('#000', 0.045, wide * 7) +
        line('#000', 0.06, wide * 3.4) +
        line('#000', 0.1, wide * 1.9) +
        line('#000', 0.2, wide * 0.5)
      )
    case 'button':
      return (
        area('#000', 'fill-opacity=".3" transform="translate(1.2 1.6)"') +
        area(inks.button, 'stroke="#000" stroke-opacity=".35" stroke-width=".8"')
      )
    case 'metal':
      return (
        area('#000', 'fill-opacity=".35" transform="translate(1 1.4)"') +
        area('#a9a494', 'stroke="#3b372e" stroke-opacity=".6" stroke-width="1"')
      )
    case 'cord':
      return line('#000', 0.25, wide + 3) + line(inks.cord, 1, wide, 'stroke-linecap="round"')
    case 'rib':
      return wide > 0
        ? line(inks.trim, 1, wide) + line('#000', 0.12, wide, 'stroke-dasharray="1.4 2.2"')
        : area(inks.trim) + area('url(#ribs)')
  }
}

/** A canvas about an outline, mm and px. */
function canvasOf({ box }: Outline, scale: number) {
  const left = box.left - beyond
  const top = box.top - beyond
  const width = Math.ceil((box.right - box.left + 2 * beyond) * scale)
  const height = Math.ceil((box.bottom - box.top + 2 * beyond) * scale)
  const svg = (inside: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${left} ${top} ${width / scale} ${height / scale}">${inside}</svg>`
  return { left, top, width, height, svg }
}

/** How much of each pixel of its canvas is garment, one channel; where it begins, mm. */
export async function coverOf(
  outline: Outline,
  scale: number,
): Promise<Pick<Sewn, 'scale' | 'left' | 'top' | 'cover'>> {
  const { left, top, width, height, svg } = canvasOf(outline, scale)
  // Ribs without a width lie within the parts.
  const trims = outline.marks.filter(({ ink, wide }) => wide && (ink === 'rib' || ink === 'cord'))
  const areas = outline.parts.map(({ path }) => `<path d="${path}" fill="#fff"/>`)
  const lines = trims.map(
    ({ path, wide }) => `<path d="${path}" fill="none" stroke="#fff" stroke-width="${wide}"/>`,
  )
  const drawn = await fromSvg(svg([...areas, ...lines].join('')), width, height)
  return { scale, left, top, cover: await rounded(channelOf(drawn, 3), scale) }
}

/** No corner of cloth is sharp: rounds them by a few millimetres. */
async function rounded({ data, width, height }: Raster, scale: number): Promise<Raster> {
  const sigma = 2.4 * scale
  if (sigma < 0.6) return { data, width, height }
  const soft = await sharp(data, { raw: { width, height, channels: 1 } })
    .blur(sigma)
    .linear(2.2 * sigma, 127.5 * (1 - 2.2 * sigma))
    .toColourspace('b-w')
    .raw()
    .toBuffer()
  return { data: new Uint8Array(soft), width, height }
}

/** Cuts and sews: everything but its cloth's threads, its print and its folds. */
export async function sew(
  chance: Chance,
  outline: Outline,
  cloth: Cloth,
  scale: number,
): Promise<Sewn> {
  const { width, height, svg } = canvasOf(outline, scale)
  const parts = svg(
    outline.parts
      .map(
        ({ path }, n) =>
          `<path d="${path}" fill="rgb(${n + 1} 0 0)" shape-rendering="crispEdges"/>`,
      )
      .join(''),
  )
  const light = labOfHex(cloth.colour)[0]
  const trim = chance.happens(0.16)
    ? moved(cloth.colour, {
        l: light > 50 ? -40 : 45,
        c: chance.real(-10, 20),
        h: chance.real(-60, 60),
      })
    : moved(cloth.colour, { l: -2 })
  const inks = {
    thread:
      cloth.weave === 'denim' && chance.happens(0.7)
        ? '#b07a3c'
        : moved(cloth.colour, { l: light > 45 ? -10 : 9 }),
    trim,
    button: chance.one([
      '#e9e4d6',
      '#efefef',
      '#2a2826',
      '#6b4a32',
      moved(cloth.colour, { l: -12 }),
    ]),
    cord: chance.happens(0.5) ? '#e8e6e0' : moved(cloth.colour, { l: light > 50 ? -14 : 12 }),
  }
  const ribs = `<defs><pattern id="ribs" width="3.6" height="10" patternUnits="userSpaceOnUse"><rect width="1.6" height="10" fill="#000" fill-opacity=".16"/></pattern></defs>`
  // Where a part lies over another there is an edge with a shadow.
  const edges = outline.parts
    .slice(1)
    .filter(({ flush }) => !flush)
    .map(({ path }) => markSvg({ path, ink: 'lap', wide: 2.2 }, inks))
  const marks = svg(
    ribs + edges.join('') + outline.marks.map((mark) => markSvg(mark, inks)).join(''),
  )

  return {
    ...(await coverOf(outline, scale)),
    parts: channelOf(await fromSvg(parts, width, height), 0).data,
    marks: await fromSvg(marks, width, height),
  }
}

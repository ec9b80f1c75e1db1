import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { chanceOf } from '../help/chance.ts'
import type { Art } from './art.ts'
import { develop, expose } from './develop.ts'
import { extents } from './extents.ts'
import { drawLook, type Fault, type Look } from './look.ts'
import { boxIn, coloursIn, inInches, maskBox, sheetIn } from './measure.ts'
import { setScene } from './scene.ts'
import { type Scene, type Shot, shoot } from './shoot.ts'
import { type Truth, valueFor } from './truth.ts'

export interface Photo {
  readonly truth: Truth
  readonly jpeg: Buffer
  /** PNG of a quarter of the picture's sides: white is garment. */
  readonly mask: Buffer
}

/** What is not left to chance: the photo's long side, px, what is wrong with it, that its print is faint. */
export interface Told {
  readonly long?: number
  readonly fault?: Fault
  readonly faint?: boolean
}

/** One photo of a set: the same for the same seed, number and art. */
export async function drawPhoto(
  seed: number,
  number: number,
  art: Art,
  told: Told = {},
): Promise<Photo> {
  const look: Look = { ...drawLook(chanceOf(seed, number), number, told.fault), ...told }
  const { scene, shot } = await shotOf(look, seed, number, art)
  const codes = expose(shot, look, chanceOf(seed, number, 6))
  const name = `photo-${String(number).padStart(4, '0')}`
  const truth = truthOf(look, scene, shot, codes, { seed, number, name })
  const noise = Math.imul(seed * 1009 + number, 0x9e3779b1) >>> 1
  return { truth, jpeg: await develop(codes, shot, look, noise), mask: await maskOf(shot) }
}

/** A margin of more than this leaves next to nothing of the picture, in parts of its shorter side. */
const mostMargin = 0.45

/**
 * Further away until nothing of the garment is cut off, unless that is what the photo is for. Throws for a garment
 * that fits at no distance.
 */
async function shotOf(
  look: Look,
  seed: number,
  number: number,
  art: Art,
): Promise<{ scene: Scene; shot: Shot }> {
  for (let wider = 0; look.margin + wider < mostMargin; wider += 0.02) {
    const scene = await setScene(look, [seed, number], art, wider)
    const shot = shoot(scene)
    if (look.fault === 'no-garment') return { scene, shot: bare(shot) }
    if (look.fault === 'cut-off' || !touchesEdge(shot)) return { scene, shot }
  }
  throw new Error(
    `Photo ${number} of seed ${seed} does not fit its picture: draw fewer, or another seed.`,
  )
}

/** What lies there is no garment. */
const bare = (shot: Shot): Shot => ({
  ...shot,
  mask: new Uint8Array(shot.mask.length),
  zones: new Uint8Array(shot.zones.length),
  graphic: null,
})

function touchesEdge({ mask, width, height }: Shot): boolean {
  for (let x = 0; x < width; x++)
    if (mask[x]! > 0 || mask[(height - 1) * width + x]! > 0) return true
  for (let y = 0; y < height; y++)
    if (mask[y * width]! > 0 || mask[y * width + width - 1]! > 0) return true
  return false
}

const quarter = 4

async function maskOf({ mask, width, height }: Shot): Promise<Buffer> {
  const small = { width: Math.floor(width / quarter), height: Math.floor(height / quarter) }
  const out = new Uint8Array(small.width * small.height)
  for (let y = 0; y < small.height; y++)
    for (let x = 0; x < small.width; x++) {
      let sum = 0
      for (let j = 0; j < quarter; j++)
        for (let i = 0; i < quarter; i++) sum += mask[(y * quarter + j) * width + x * quarter + i]!
      out[y * small.width + x] = sum >= 128 * quarter * quarter ? 255 : 0
    }
  return await sharp(out, { raw: { ...small, channels: 1 } })
    .toColourspace('b-w')
    .png({ palette: true, colours: 2 })
    .toBuffer()
}

function truthOf(
  look: Look,
  scene: Scene,
  shot: Shot,
  codes: Uint8Array,
  { seed, number, name }: { seed: number; number: number; name: string },
): Truth {
  const piece = look.fault === 'no-garment' ? null : scene.piece
  const { lightness, colours } = coloursIn(codes, shot)
  const reach = piece && look.fault !== 'cut-off' ? extents(piece) : null
  return {
    file: `${name}.jpg`,
    mask: `${name}.mask.png`,
    seed,
    number,
    split: number % 2 === 0 ? 'tune' : 'held',
    width: shot.width,
    height: shot.height,
    fault: look.fault,
    kind: piece ? look.kind : null,
    print: piece ? look.print : null,
    garment: boxIn(shot, maskBox(shot)),
    value: lightness === null ? null : valueFor(lightness),
    graphic: boxIn(shot, shot.graphic),
    lightness,
    colours,
    sheet: scene.sheet ? sheetIn(codes, shot, scene, scene.sheet) : null,
    size: reach && {
      garmentWidthIn: inInches(reach.garment.width),
      garmentLengthIn: inInches(reach.garment.length),
      graphicWidthIn: reach.graphic && inInches(reach.graphic.width),
      graphicHeightIn: reach.graphic && inInches(reach.graphic.length),
    },
    traits: {
      ground: look.ground,
      beside: look.edge,
      nearGround: look.near,
      side: look.side,
      weave: look.weave,
      stripes: look.print === 'stripe-check' ? look.stripes : null,
      chest: look.chest,
      cloth: piece?.cloth.colour ?? null,
      turn: Math.round(look.turn),
      tilt: Math.round(look.tilt),
      focal35: Math.round(look.focal35 * 100) / 100,
      focalTold: look.tells,
      light: look.light,
      cast: Math.round(look.cast * 1000) / 1000,
      exif: look.exif,
      quality: look.quality,
      noise: Math.round(look.noise * 100) / 100,
    },
  }
}

/**
 * Draws so many photos of the set of a seed into a folder, each with its truth and its mask beside it.
 * `drawn` hears after each photo how many there are, `told` tells of the photo of a number.
 */
export async function drawSet(
  folder: string,
  seed: number,
  count: number,
  art: Art,
  {
    drawn,
    told,
  }: { readonly drawn?: (count: number) => void; readonly told?: (n: number) => Told } = {},
): Promise<Truth[]> {
  mkdirSync(folder, { recursive: true })
  const truths: Truth[] = []
  for (let number = 0; number < count; number++) {
    const { truth, jpeg, mask } = await drawPhoto(seed, number, art, told?.(number))
    writeFileSync(join(folder, truth.file), jpeg)
    writeFileSync(join(folder, truth.mask), mask)
    writeFileSync(join(folder, truth.file.replace(/jpg$/, 'json')), JSON.stringify(truth, null, 2))
    truths.push(truth)
    drawn?.(truths.length)
  }
  return truths
}

import sharp from 'sharp'
import { chanceOf } from '../help/chance.ts'
import { bell, bells, storedTurn, streak } from '../help/flaws.ts'
import { random } from '../help/xorshift.ts'
import type { Look } from './look.ts'
import type { Picture } from './picture.ts'

interface Pixels {
  readonly data: Uint8Array
  readonly width: number
  readonly height: number
}

const channels = 3
const degree = Math.PI / 180

/** Gives a picture what cloth, light, lens and file do to it; a JPEG. */
export async function degrade({ image, em }: Picture, look: Look): Promise<Buffer> {
  const { data, info } = await sharp(image)
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true })
  const lit = bentAndLit({ data, width: info.width, height: info.height }, look, em)
  const seen = grained(await blurred(lit, look, em), look)
  return await sharp(seen.data, { raw: { width: seen.width, height: seen.height, channels } })
    .rotate((look.turn + storedTurn[look.exif]) % 360)
    .withMetadata({ orientation: look.exif })
    .jpeg({ quality: look.quality })
    .toBuffer()
}

/** The cloth's waves move the pixels and shade them; light falls unevenly. */
function bentAndLit(from: Pixels, look: Look, em: number): Pixels {
  const { width, height, data } = from
  const { curl, light } = look
  const out = new Uint8Array(data.length)
  const long = Math.max(width, height)
  const wave = (2 * Math.PI * curl.waves) / long
  const depth = curl.depth * em
  const steep = depth * wave
  const gains = [1 + light.warmth, 1, 1 - light.warmth].map((gain) => gain * light.level)
  const [lightX, lightY] = directed(light.towards)
  const { shadow } = light
  const [shadowX, shadowY] = directed(shadow?.towards ?? 0)

  for (let y = 0; y < height; y++) {
    const v = y / long - height / long / 2
    const moveX = depth * 0.6 * Math.sin(wave * y + curl.phase)
    for (let x = 0; x < width; x++) {
      const u = x / long - width / long / 2
      const angle = wave * x + curl.phase + 0.4 * v
      const fromX = inside(x + moveX, width)
      const fromY = inside(y + depth * Math.sin(angle), height)
      let bright = 1 + light.slope * (u * lightX + v * lightY) - 0.35 * (u * u + v * v)
      bright *= 1 + 2.2 * steep * Math.cos(angle)
      if (shadow) {
        const under = (u * shadowX + v * shadowY - shadow.at) / shadowEdge
        bright *= 1 - shadow.depth * Math.min(1, Math.max(0, under + 0.5))
      }

      const left = fromX | 0
      const top = fromY | 0
      const across = fromX - left
      const down = fromY - top
      const a = (top * width + left) * channels
      const b = a + width * channels
      const to = (y * width + x) * channels
      for (let c = 0; c < channels; c++) {
        const above = data[a + c]! * (1 - across) + data[a + channels + c]! * across
        const below = data[b + c]! * (1 - across) + data[b + channels + c]! * across
        const value = (above * (1 - down) + below * down) * bright * gains[c]!
        out[to + c] = Math.min(value, 255)
      }
    }
  }
  return { data: out, width, height }
}

/** What lies beyond an edge is taken from before it, as in a mirror: cloth goes on. */
function inside(at: number, length: number): number {
  const last = length - 1.001
  return at < 0 ? Math.min(-at, last) : at > last ? Math.max(0, 2 * last - at) : at
}

/** How wide a shadow's edge is, in parts of the long side. */
const shadowEdge = 0.05

const directed = (degrees: number): [x: number, y: number] => [
  Math.cos(degrees * degree),
  Math.sin(degrees * degree),
]

async function blurred({ data, width, height }: Pixels, look: Look, em: number): Promise<Pixels> {
  let seen = sharp(data, { raw: { width, height, channels } })
  const sigma = look.blur * em
  if (sigma >= 0.3) seen = seen.blur(sigma)
  if (look.shake) {
    const reach = Math.min(12, Math.max(1, Math.round((look.shake.length * em) / 2)))
    seen = seen.convolve(streak(reach, look.shake.towards))
  }
  return { data: await seen.raw().toBuffer(), width, height }
}

/** Noise of a sensor: most of it in brightness, some in colour. */
function grained({ data, width, height }: Pixels, { light, seed }: Look): Pixels {
  const chance = chanceOf(seed, 5)
  const grain = bell(chance, light.noise)
  const out = new Uint8ClampedArray(data.length)
  const next = random(seed)
  const draw = () => grain[next(bells)]!
  for (let at = 0; at < data.length; at += channels) {
    const bright = draw()
    for (let c = 0; c < channels; c++) out[at + c] = data[at + c]! + bright * 0.85 + draw() * 0.45
  }
  return { data: new Uint8Array(out.buffer), width, height }
}

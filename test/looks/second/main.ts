import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { argv } from 'node:process'
import { fileURLToPath } from 'node:url'
import sharp from 'sharp'
import type { Box } from '../truth.ts'
import { anyColour, between, cloth, oneOf, reseed, share, whole } from './chance.ts'
import { printOf, seamsOf } from './cloths.ts'
import { groundOf } from './grounds.ts'
import { half, kinds, type Point, path } from './shapes.ts'

/**
 * main.ts <seed> <photos>: garment photos of another making, flatter and plainer than those of test/looks, so
 * that what is trained does not know one maker's ways alone; into test/.out/looks/second-<seed>/.
 */

/** Draws one photo, with its mask and what training asks of its truth, into a folder. */
async function draw(folder: string, seed: number, n: number): Promise<void> {
  reseed(seed * 100003 + n)
  const [W, H] = share() < 0.75 ? [900, 1200] : [1200, 900]
  const kind = oneOf(kinds),
    base = cloth()
  const fault =
    share() < 0.25 ? oneOf(['blurred', 'dark', 'bright', 'cut-off', 'too-small', 'no-garment']) : ''
  const cls = oneOf(['solid', 'single', 'single', 'allover', 'stripe-check'])
  let size = between(0.72, 0.95) * Math.min(W * (kind === 'pants' || kind === 'skirt' ? 1.4 : 1), H)
  if (size > 0.95 * H) size = 0.95 * H
  let [cx, cy] = [W / 2 + between(-0.03, 0.03) * W, H / 2 + between(-0.02, 0.02) * H]
  if (fault === 'too-small') size *= between(0.18, 0.3)
  if (fault === 'cut-off') {
    size *= between(1.2, 1.5)
    const a = oneOf([0, 1, 2, 3])
    cx += [0, 0, -1, 1][a]! * size * between(0.25, 0.35)
    cy += [-1, 1, 0, 0][a]! * size * between(0.25, 0.4)
  }
  const rot =
    share() < 0.7
      ? between(-8, 8)
      : share() < 0.7
        ? between(-25, 25)
        : oneOf([90, 180, -90]) + between(-8, 8)
  if (Math.abs(rot) > 30 && fault !== 'cut-off') size = Math.min(size, 0.85 * Math.min(W, H))
  const h = half(kind)
  const pts: Point[] = [
    ...h,
    ...h
      .slice()
      .reverse()
      .filter((p) => p[0] !== 0)
      .map(([x, y]): Point => [-x + between(-0.01, 0.01), y + between(-0.01, 0.01)]),
  ]
  const d = path(pts),
    tf = `translate(${cx} ${cy}) rotate(${rot}) scale(${size})`
  let box: Box | null = null
  const cols = Array.from({ length: whole(1, 4) }, anyColour)
  const print = printOf(cls, kind, cols)
  const feat = seamsOf(kind)
  const svg = (inner: string) =>
    Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" width="${W}" height="${H}">${inner}</svg>`)
  const raw = async (inner: string) => await sharp(svg(inner)).ensureAlpha().raw().toBuffer()
  const mask4 = await raw(`<path d="${d}" transform="${tf}" fill="white"/>`)
  const cloth4 = await raw(
    `<g transform="${tf}"><rect x="-2" y="-2" width="4" height="4" fill="${base}"/>${print}${feat}</g>`,
  )
  const print4 = cls === 'single' ? await raw(`<g transform="${tf}">${print}</g>`) : null
  const { gsvg, grain } = groundOf(W, H)
  const ground4 = await raw(gsvg)
  const soft = async (sig: number, buf: Buffer) =>
    await sharp(buf, { raw: { width: W, height: H, channels: 1 } })
      .blur(sig)
      .raw()
      .toBuffer({ resolveWithObject: true })
      .then((r) =>
        r.info.channels === 1
          ? r.data
          : Buffer.from(r.data.filter((_, i) => i % r.info.channels === 0)),
      )
  const m1 = Buffer.from(mask4.filter((_, i) => i % 4 === 3))
  const shadow = await soft(between(4, 18), m1)
  const [sx, sy, so] = [whole(-8, 8), whole(-8, 8), between(0.1, 0.55)]
  const field = async (cell: number) => {
    const [w, hh] = [Math.ceil(W / cell) + 2, Math.ceil(H / cell) + 2]
    const b = Buffer.from(Array.from({ length: w * hh }, () => whole(0, 255)))
    const r = await sharp(b, { raw: { width: w, height: hh, channels: 1 } })
      .resize(W, H, { fit: 'fill', kernel: 'cubic' })
      .extractChannel(0)
      .raw()
      .toBuffer()
    return r
  }
  const gn = await field(grain ? between(2, 5) : between(3, 60)),
    gna = grain ? between(0.1, 0.35) : between(0.01, 0.08)
  const cn = await field(between(60, 200)),
    cna = between(0.05, 0.3),
    cf = await field(between(14, 40)),
    cfa = between(0.01, 0.1)
  const folds = Array.from({ length: whole(0, 5) }, () => ({
    x: between(0.2, 0.8) * W,
    y: between(0.2, 0.8) * H,
    a: between(0, Math.PI),
    w: between(4, 20),
    len: between(80, 300),
    d: between(-0.25, 0.25),
  }))
  const lg = [between(-0.35, 0.35), between(-0.35, 0.35)],
    vig = between(0, 0.3),
    cast = [between(0.92, 1.08), 1, between(0.88, 1.1)],
    expo =
      fault === 'dark'
        ? between(0.06, 0.16)
        : fault === 'bright'
          ? between(2.6, 4.5)
          : between(0.75, 1.05)
  const nz = between(1, 5),
    res = Buffer.alloc(W * H * 3)
  const lin = (v: number) => {
      const part = v / 255
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
    },
    LL = Float64Array.from({ length: 256 }, (_, i) => lin(i))
  const gam = (v: number) => {
    const kept = Math.min(1, Math.max(0, v))
    return 255 * (kept <= 0.0031308 ? 12.92 * kept : 1.055 * kept ** (1 / 2.4) - 0.055)
  }
  const G = () => (share() + share() + share() - 1.5) * 2
  const weave = between(0, 0.06),
    wp = between(2, 4)
  for (let y = 0; y < H; y++)
    for (let x = 0; x < W; x++) {
      const i = y * W + x,
        nx = (2 * x) / W - 1,
        ny = (2 * y) / H - 1
      const light =
        (1 + lg[0]! * nx * 0.5 + lg[1]! * ny * 0.5) * (1 - (vig * (nx * nx + ny * ny)) / 2) * expo
      const m = fault === 'no-garment' ? 0 : m1[i]! / 255
      const si = Math.min(H - 1, Math.max(0, y - sy)) * W + Math.min(W - 1, Math.max(0, x - sx))
      const sh = fault === 'no-garment' ? 1 : 1 - (so * shadow[si]!) / 255
      const g = 1 + gna * (gn[i]! / 128 - 1)
      let fold =
        1 +
        cna * (cn[i]! / 128 - 1) * 0.6 +
        cfa * (cf[i]! / 128 - 1) +
        weave * (Math.sin((x / wp) * 3) * Math.sin((y / wp) * 3))
      for (const f of folds) {
        const u = (x - f.x) * Math.cos(f.a) + (y - f.y) * Math.sin(f.a),
          v = -(x - f.x) * Math.sin(f.a) + (y - f.y) * Math.cos(f.a)
        if (Math.abs(u) < f.len)
          fold += f.d * (v / f.w) * Math.exp(-0.5 * (v / f.w) ** 2) * (1 - (u / f.len) ** 2)
      }
      const rim =
        fault === 'no-garment' ? 0 : 1 - 0.25 * Math.max(0, 1 - (shadow[i]! / 255 - 0.5) * 3)
      for (let c = 0; c < 3; c++) {
        const gv = LL[ground4[i * 4 + c]!]! * g * sh,
          cv = LL[cloth4[i * 4 + c]!]! * fold * rim
        res[i * 3 + c] = Math.max(
          0,
          Math.min(255, gam((gv * (1 - m) + cv * m) * light * cast[c]!) + G() * nz),
        )
      }
    }
  let pic = sharp(res, { raw: { width: W, height: H, channels: 3 } })
  if (fault === 'blurred') pic = pic.blur(between(4, 9))
  else if (share() < 0.5) pic = pic.blur(between(0.5, 1.1))
  const shot = await pic.raw().toBuffer()
  if (print4 && fault !== 'no-garment') {
    let [x0, y0, x1, y1] = [W, H, -1, -1]
    for (let y = 0; y < H; y++)
      for (let x = 0; x < W; x++) {
        const i = y * W + x
        if (print4[i * 4 + 3]! > 127 && m1[i]! > 127) {
          x0 = Math.min(x0, x)
          y0 = Math.min(y0, y)
          x1 = Math.max(x1, x)
          y1 = Math.max(y1, y)
        }
      }
    if (x1 > 0) box = { x: x0 / W, y: y0 / H, w: (x1 - x0 + 1) / W, h: (y1 - y0 + 1) / H }
  }
  const name = `photo-${String(n).padStart(4, '0')}`
  await sharp(shot, { raw: { width: W, height: H, channels: 3 } })
    .jpeg({ quality: whole(70, 92) })
    .toFile(join(folder, `${name}.jpg`))
  await sharp(fault === 'no-garment' ? Buffer.alloc(W * H) : m1, {
    raw: { width: W, height: H, channels: 1 },
  })
    .png()
    .toFile(join(folder, `${name}.mask.png`))
  const truth = {
    file: `${name}.jpg`,
    mask: `${name}.mask.png`,
    width: W,
    height: H,
    fault: fault || null,
    print: cls,
    kind,
    graphic: box,
    sheet: null,
  }
  writeFileSync(join(folder, `${name}.json`), JSON.stringify(truth))
}

const [seed = 1, count = 100] = argv.slice(2).map(Number)
const home = fileURLToPath(new URL(`../../../test/.out/looks/second-${seed}/`, import.meta.url))
mkdirSync(home, { recursive: true })
for (let n = 0; n < count; n += 1) await draw(home, seed, n)

import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import sharp from 'sharp'
import type { Chance } from '../help/chance.ts'
import { boxOf, cropped, type Raster } from './raster.ts'

/** Pictures to be printed on cloth, cropped to what is seen of them. */
export interface Art {
  pick(chance: Chance): Promise<Raster>
}

const home = fileURLToPath(new URL('../../test/.out/art/', import.meta.url))
const drawings = join(home, 'usr/share/openclipart/svg')
const source = 'openclipart-svg'

/** Debian's package of drawings in the public domain, unpacked once; says what to do where that fails. */
function fetched(): string {
  if (existsSync(drawings)) return drawings
  mkdirSync(home, { recursive: true })
  try {
    execFileSync('apt-get', ['download', source], { cwd: home, stdio: 'pipe' })
    for (const file of readdirSync(home).filter((name) => name.endsWith('.deb')))
      execFileSync('dpkg-deb', ['-x', file, '.'], { cwd: home, stdio: 'pipe' })
  } catch (cause) {
    throw new Error(
      `The drawings could not be fetched. Where apt is not at hand, take Debian's package ${source} from packages.debian.org and unpack it (it is an ar archive that holds data.tar.xz) into ${home}.`,
      { cause },
    )
  }
  return drawings
}

/**
 * Folders of drawings that clothes carry, each as often as its weight, and which of their drawings where not
 * all are fit: no people, no marks or models of firms, no emblems.
 */
const folders: Readonly<Record<string, { readonly often: number; readonly only?: RegExp }>> = {
  'animals/birds': { often: 10 },
  'animals/bugs': { often: 6 },
  'animals/dinosaurs': { often: 6 },
  'animals/fish': { often: 6 },
  'animals/mammals': { often: 20 },
  'plants/flowers': { often: 12 },
  'plants/trees': { often: 6 },
  'food/fruit': { often: 6 },
  'food/vegetables': { often: 4 },
  'food/desserts': { often: 4 },
  'recreation/music': {
    often: 5,
    only: /record|guitar|cello|drum|harp|violin|note|horn|clef|maracas/,
  },
  'recreation/sports': {
    often: 5,
    only: /ball|bat_|cap_|glove|racket|dart|target|surf|shoe|helmet/,
  },
  'recreation/toys': { often: 4, only: /ball|bear|duck|block|train|boomerang|plane|wagon|robot/ },
  'recreation/holiday': {
    often: 5,
    only: /tree|wreath|heart|gift|pumpkin|rainbow|snow|fire|cake|sailing/,
  },
  'transportation/vehicles': {
    often: 8,
    only: /aircraft|airplane|bus|bicy|bici|truck|rocket|trawler|house_|sledge|tratt/,
  },
  'shapes/stars': { often: 4 },
  decorations: {
    often: 6,
    only: /knot|triskel|sakura|motivo|decora|wreath|flourish_one|flourish_two/,
  },
  'science/astronomy': { often: 4, only: /moon|saturn|jupiter|venus/ },
  'buildings/homes': { often: 3 },
}

/** Parts of names that are unfit in any folder: people, signs, and what is no picture. */
const unfit =
  /logo|flag|brand|icon|person|(?<![a-z])(?:wo)?man(?![a-z])|girl|boy|father|angel|tux|text|banner|frame|border|symbol|fanart|sign|grenade|crossing/i
const most = { bytes: 150_000 }
const size = 800

/** The drawings of the package, by name in their folders. */
export function openArt(): Art {
  const root = fetched()
  const all = readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.svg') && !unfit.test(file))
    .filter((file) => statSync(join(root, file)).size < most.bytes)
    .sort()
  const lists = new Map(
    Object.entries(folders).map(([folder, { only }]) => [
      folder,
      all.filter((file) => file.startsWith(`${folder}/`) && (only?.test(file) ?? true)),
    ]),
  )
  const often = Object.fromEntries(
    Object.entries(folders).map(([folder, { often }]) => [folder, often]),
  )
  return {
    async pick(chance) {
      for (;;) {
        const file = chance.one(lists.get(chance.weighed(often))!)
        const art = await drawn(join(root, file))
        if (art) return art
      }
    },
  }
}

/** A drawing's pixels; null where it cannot be read, or shows next to nothing or a strip. */
async function drawn(file: string): Promise<Raster | null> {
  try {
    const { width = 0, height = 0 } = await sharp(file).metadata()
    if (Math.min(width, height) < 8 || Math.max(width, height) > 8000) return null
    const density = Math.min(2400, Math.max(4, (72 * size) / Math.max(width, height)))
    const { data, info } = await sharp(file, { density })
      .resize(size, size, { fit: 'inside' })
      .ensureAlpha()
      .toColourspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true })
    const whole: Raster = { data: new Uint8Array(data), width: info.width, height: info.height }
    const box = boxOf(whole, 60)
    if (!box) return null
    const art = cropped(whole, box)
    const shape = art.width / art.height
    if (Math.min(art.width, art.height) < 160 || shape > 3.2 || shape < 1 / 3.2) return null
    let ink = 0
    for (let at = 3; at < art.data.length; at += 4) ink += art.data[at]! > 60 ? 1 : 0
    return ink / (art.width * art.height) < 0.12 ? null : art
  } catch {
    return null
  }
}

export async function resized(art: Raster, width: number, height: number): Promise<Raster> {
  const { data, info } = await sharp(art.data, {
    raw: { width: art.width, height: art.height, channels: 4 },
  })
    .resize(Math.max(2, Math.round(width)), Math.max(2, Math.round(height)), { fit: 'fill' })
    .raw()
    .toBuffer({ resolveWithObject: true })
  return { data: new Uint8Array(data), width: info.width, height: info.height }
}

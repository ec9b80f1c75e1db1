import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { argv } from 'node:process'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'
import { openBrowser } from '../help/browser.ts'
import { coveredLine, wordsOf } from './contents.ts'
import { degrade } from './degrade.ts'
import { type Drawn, drawLabel, type Redrawn } from './draw.ts'
import { openEasel, takePicture } from './picture.ts'
import { contactSheet } from './sheet.ts'
import { type Kind, kinds, type Truth } from './truth.ts'

/**
 * Photos of invented labels, each with what it shows in a JSON beside it, into test/.out/labels/<seed>/:
 * main.ts [<seed>] [<photos of kind main>] [<photos of each other kind>]
 */

const [seed, ofMain, ofOthers] = z
  .tuple([
    z.coerce.number().int().positive().default(1),
    z.coerce.number().int().nonnegative().default(240),
    z.coerce.number().int().nonnegative().default(20),
  ])
  .parse([argv[2], argv[3], argv[4]])

const folder = fileURLToPath(new URL(`../../test/.out/labels/${seed}/`, import.meta.url))
const tell = (line: string): void => void process.stdout.write(`${line}\n`)

function truthOf({ contents, look, sure }: Drawn, file: string, capital: number): Truth {
  const { kind, languages, blocks, iron, text, traits } = contents
  const { light, curl, shake, cover } = look
  const covered = cover ? coveredLine(contents) : undefined
  return {
    file,
    kind,
    languages,
    blocks,
    iron,
    text,
    traits: {
      ...traits,
      sureInText: sure,
      capitalPx: Math.round(capital),
      font: look.font,
      bold: look.bold,
      ground: look.ground,
      cloth: look.cloth.is,
      ink: look.ink,
      worn: look.worn,
      ghost: look.ghost,
      cover: cover?.by ?? null,
      covered: covered ? wordsOf(covered) : null,
      turn: look.turn,
      exif: look.exif,
      tilt: look.tilt,
      pitch: look.pitch,
      yaw: look.yaw,
      curl: curl.depth,
      blur: look.blur,
      shake: shake?.length ?? null,
      light: light.level,
      noise: light.noise,
      shadow: light.shadow?.depth ?? null,
      quality: look.quality,
    },
  }
}

rmSync(folder, { recursive: true, force: true })
mkdirSync(folder, { recursive: true })

const wanted = kinds.flatMap((kind): [Kind, number][] =>
  Array.from({ length: kind === 'main' ? ofMain : ofOthers }, (_, at) => [kind, at + 1]),
)
const redrawn: Redrawn[] = []
const files: string[] = []
const browser = await openBrowser()
try {
  const easel = await openEasel(browser)
  const finish = async (drawn: Drawn, file: string, photo: Promise<Buffer>, capital: number) => {
    writeFileSync(join(folder, file), await photo)
    const truth = truthOf(drawn, file, capital)
    writeFileSync(join(folder, `${file.slice(0, -4)}.json`), JSON.stringify(truth, null, 2))
  }
  // The next picture is taken while this one is worked on.
  let working: Promise<void> = Promise.resolve()
  for (const [kind, number] of wanted) {
    const drawn = drawLabel(seed, kind, number)
    redrawn.push(...drawn.redrawn)
    const picture = await takePicture(easel, drawn.contents, drawn.look)
    const file = `${kind}-${String(number).padStart(3, '0')}.jpg`
    await working
    working = finish(drawn, file, degrade(picture, drawn.look), picture.capital)
    files.push(join(folder, file))
    if (files.length % 20 === 0) tell(`  ${files.length} of ${wanted.length}`)
  }
  await working
} finally {
  await browser.close()
}

writeFileSync(join(folder, '..', `redrawn-${seed}.json`), JSON.stringify(redrawn, null, 2))
const sheet = await contactSheet(files, join(folder, '..', `sheet-${seed}.png`))
tell(`${files.length} photos in ${folder}`)
tell(`${redrawn.length} labels drawn again, as their own words read otherwise: ${tallied(redrawn)}`)
tell(sheet)

function tallied(all: readonly Redrawn[]): string {
  const counts = new Map<string, number>()
  for (const { kind, misread, sure } of all) {
    const name = `${kind} ${misread}${sure ? ' and sure' : ''}`
    counts.set(name, (counts.get(name) ?? 0) + 1)
  }
  return [...counts].map(([name, count]) => `${name} ${count}`).join(', ') || 'none'
}

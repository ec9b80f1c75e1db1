import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { openBrowser } from '../help/browser.ts'
import { coveredLine, wordsOf } from './contents.ts'
import { degrade } from './degrade.ts'
import { type Drawn, drawLabel, type Redrawn } from './draw.ts'
import { openEasel, takePicture } from './picture.ts'
import { type Kind, kinds, type Truth } from './truth.ts'

/** How many photos of each kind are drawn of a set; those that are not named: none. */
export type Counts = Readonly<Partial<Record<Kind, number>>>

export interface DrawnSet {
  /** In the order in which they were drawn; their `file` lies in the folder. */
  readonly truths: readonly Truth[]
  readonly redrawn: readonly Redrawn[]
}

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

/**
 * Draws photos of the set of a seed into a folder, each with what it shows in a JSON beside it.
 * `drawn` hears after each photo how many there are, and of how many.
 */
export async function drawSet(
  folder: string,
  seed: number,
  counts: Counts,
  drawn: (count: number, of: number) => void = () => {},
): Promise<DrawnSet> {
  const wanted = kinds.flatMap((kind): [Kind, number][] =>
    Array.from({ length: counts[kind] ?? 0 }, (_, at) => [kind, at + 1]),
  )
  mkdirSync(folder, { recursive: true })
  const truths: Truth[] = []
  const redrawn: Redrawn[] = []
  const browser = await openBrowser()
  try {
    const easel = await openEasel(browser)
    const finish = async (truth: Truth, photo: Promise<Buffer>) => {
      writeFileSync(join(folder, truth.file), await photo)
      const beside = truth.file.replace(/jpg$/, 'json')
      writeFileSync(join(folder, beside), JSON.stringify(truth, null, 2))
    }
    // The next picture is taken while this one is worked on.
    let working: Promise<void> = Promise.resolve()
    for (const [kind, number] of wanted) {
      const label = drawLabel(seed, kind, number)
      redrawn.push(...label.redrawn)
      const picture = await takePicture(easel, label.contents, label.look)
      const file = `${kind}-${String(number).padStart(3, '0')}.jpg`
      const truth = truthOf(label, file, picture.capital)
      await working
      working = finish(truth, degrade(picture, label.look))
      truths.push(truth)
      drawn(truths.length, wanted.length)
    }
    await working
  } finally {
    await browser.close()
  }
  return { truths, redrawn }
}

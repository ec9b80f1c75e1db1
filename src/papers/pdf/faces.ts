import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { create, type Font } from 'fontkit'
import { cutFace } from './cut-face.ts'
import { trueTypeOf } from './woff2.ts'

/** A way that text is set. */
export type Face = 'text' | 'bold' | 'display'

/** The parts of a family, by the characters they hold. */
const families = {
  atkinson: {
    files: '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-',
    parts: ['latin', 'latin-ext'],
  },
  fraunces: {
    files: '@fontsource-variable/fraunces/files/fraunces-',
    parts: ['latin', 'latin-ext', 'vietnamese'],
  },
} as const

type Family = keyof typeof families

type Chain = readonly { readonly family: Family; readonly weight: number }[]

/** The families of a face, the first before the others. */
const chains: Readonly<Record<Face, Chain>> = {
  text: [
    { family: 'atkinson', weight: 400 },
    { family: 'fraunces', weight: 400 },
  ],
  bold: [
    { family: 'atkinson', weight: 700 },
    { family: 'fraunces', weight: 700 },
  ],
  display: [
    { family: 'fraunces', weight: 600 },
    { family: 'atkinson', weight: 700 },
  ],
}

/** A font that a text may be set in. */
export interface NamedCut {
  readonly name: string
  readonly characters: ReadonlySet<number>
  /** Made when it is first asked for, and kept. */
  readonly font: () => Font
}

const { resolve } = createRequire(import.meta.url)

/** Made when it is first asked for, and kept: the same for every paper. */
function kept<Key extends string, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const known = new Map<Key, Value>()
  return (key) => {
    if (!known.has(key)) known.set(key, make(key))
    return known.get(key)!
  }
}

const fontOf = kept((path: string) => trueTypeOf(readFileSync(resolve(path))))
const charactersIn = kept(
  (path: string): ReadonlySet<number> => new Set(create(fontOf(path)).characterSet),
)

const cutNamed = kept((name: `${Family} ${string} ${number}`): NamedCut => {
  const [family, part, weight] = name.split(' ') as [Family, string, string]
  const path = `${families[family].files}${part}-wght-normal.woff2`
  let font: Font | null = null
  return {
    name,
    characters: charactersIn(path),
    font: () => {
      font ??= create(cutFace(fontOf(path), Number(weight)))
      return font
    },
  }
})

/** A piece of text in one font; `font` null: a character that no font has. */
export interface Run {
  readonly font: NamedCut | null
  readonly text: string
}

/** The fonts of a family one by one, so that none is read without need. */
function* fontsOf({ family, weight }: { family: Family; weight: number }): Generator<NamedCut> {
  for (const part of families[family].parts) yield cutNamed(`${family} ${part} ${weight}`)
}

function fontFor(sign: string, chain: Chain): NamedCut | null {
  for (const one of chain) {
    for (const cut of fontsOf(one)) if (cut.characters.has(sign.codePointAt(0)!)) return cut
  }
  return null
}

/**
 * A word in the fonts that have its characters: in one family where it can be, else character by character.
 */
export function runsOf(word: string, face: Face): Run[] {
  const chain = chains[face]
  const signs = [...word]
  const whole = chain.find((one) => signs.every((sign) => fontFor(sign, [one]) !== null))
  const runs: { font: NamedCut | null; text: string }[] = []
  for (const sign of signs) {
    const font = fontFor(sign, whole ? [whole] : chain)
    const last = runs.at(-1)
    if (last && font && last.font === font) last.text += sign
    else runs.push({ font, text: sign })
  }
  return runs
}

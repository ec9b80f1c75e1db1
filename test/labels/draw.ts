import { readLabel } from '../../src/textile/label.ts'
import { chanceOf } from '../help/chance.ts'
import { type Contents, drawContents } from './contents.ts'
import { drawLook, type Look } from './look.ts'
import { type Kind, kinds, type Misread, misreadOf } from './truth.ts'

export interface Drawn {
  readonly contents: Contents
  readonly look: Look
  /** The label's own words read as sure. */
  readonly sure: boolean
  /** Labels that were drawn for this photo before it, whose own words read as something else. */
  readonly redrawn: readonly Redrawn[]
}

export interface Redrawn {
  readonly kind: Kind
  readonly misread: Misread
  readonly sure: boolean
  readonly layout: string
  readonly told: Pick<Contents, 'blocks' | 'iron'>
  readonly read: Pick<Contents, 'blocks' | 'iron'>
  readonly text: string
}

const most = 20

/**
 * The label of one photo: the same for the same set and number. Words that perfect sight would misread
 * are drawn again; those in strange letters alone stay, since no table here could read them.
 */
export function drawLabel(set: number, kind: Kind, number: number): Drawn {
  const redrawn: Redrawn[] = []
  for (let attempt = 0; attempt < most; attempt++) {
    const chance = chanceOf(set, kinds.indexOf(kind), number, attempt)
    const contents = drawContents(chance, kind)
    const reading = readLabel(contents.text)
    const misread = contents.languages.length === 0 ? null : misreadOf(contents, reading)
    if (!misread) return { contents, look: drawLook(chance, contents), sure: reading.sure, redrawn }
    redrawn.push({
      kind,
      misread,
      sure: reading.sure,
      layout: contents.layout,
      told: { blocks: contents.blocks, iron: contents.iron },
      read: { blocks: reading.blocks, iron: reading.iron.level },
      text: contents.text,
    })
  }
  throw new Error(`No label of kind ${kind} could be drawn that reads as it is meant.`)
}

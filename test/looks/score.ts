import { differenceCiede2000 } from 'culori/fn'
import type { Lab } from './light.ts'
import { type Fault, faults } from './look.ts'
import { type PrintClass, printClasses } from './print.ts'
import type { Mask, Reading } from './reading.ts'
import type { Box, Truth } from './truth.ts'

/** A photo's truth, what was read off it, and its true mask where masks are to be held together. */
export interface Read {
  readonly truth: Truth
  readonly reading: Reading
  readonly mask?: Mask
}

/** Median and 90th percentile of so many; null where there are none. */
export interface Spread {
  readonly count: number
  readonly median: number
  readonly p90: number
}

/** Shares are from 0 to 1; what could not be asked of any photo is null. */
export interface Score {
  readonly photos: number
  /** Print, mask, boxes, colours, value and sizes are asked of photos without a fault. */
  readonly sound: number
  readonly print: {
    readonly right: number | null
    readonly byClass: Readonly<Record<PrintClass, number | null>>
    readonly worst: number | null
    /** How many are sure of it, and how many of those are right. */
    readonly sure: number | null
    readonly rightWhereSure: number | null
  }
  readonly maskIou: number | null
  readonly graphic: {
    readonly count: number
    readonly medianIou: number
    readonly half: number
  } | null
  /** CIEDE2000 of the largest colour. */
  readonly colour: Spread | null
  readonly value: number | null
  /** How often each fault is named where it is, and where there is none at all. */
  readonly fitness: Readonly<
    Record<Fault, { readonly caught: number | null; readonly falseAlarms: number | null }>
  >
  readonly sheet: {
    /** Of whole sheets that contrast with what they lie on. */
    readonly found: number | null
    readonly asked: number
    /** Photos that were measured by what is no sheet, by another size or by corners that lie elsewhere. */
    readonly wrong: readonly string[]
  }
  /** Of every length that was read by a sheet rightly found, in parts of the true one. */
  readonly size: { readonly paper: Spread | null; readonly card: Spread | null }
  readonly misread: readonly {
    readonly file: string
    readonly print: PrintClass
    readonly as: PrintClass | null
    readonly confidence: number
  }[]
}

/** From this confidence on a reading of the print is sure. */
const sureFrom = 0.7

/** How far a corner may be off, in parts of the picture's long side. */
const cornerSlack = 0.02
/** And one of a sheet that is covered in part, which may as well be passed over: in parts of its shortest side. */
const coveredSlack = 0.04

/** A colour that covers nearly as much as the largest may stand for it. */
const nearlyLargest = 0.85

const share = (all: readonly boolean[]): number | null =>
  all.length === 0 ? null : all.filter(Boolean).length / all.length

/** The value at a part of the way through the sorted values, between two of them where it falls there. */
function quantile(of: readonly number[], part: number): number {
  const sorted = [...of].sort((a, b) => a - b)
  const at = (sorted.length - 1) * part
  const low = sorted[Math.floor(at)]!
  const high = sorted[Math.ceil(at)]!
  return low === high ? low : low + (high - low) * (at - Math.floor(at))
}

const spread = (of: readonly number[]): Spread | null =>
  of.length === 0 ? null : { count: of.length, median: quantile(of, 0.5), p90: quantile(of, 0.9) }

/** Common area of two boxes in parts of the area that either covers. */
export function boxIou(one: Box, other: Box): number {
  const across = Math.min(one.x + one.w, other.x + other.w) - Math.max(one.x, other.x)
  const down = Math.min(one.y + one.h, other.y + other.h) - Math.max(one.y, other.y)
  const both = Math.max(0, across) * Math.max(0, down)
  return both / (one.w * one.h + other.w * other.h - both)
}

/** The same of two masks, asked at each pixel of the first. */
export function maskIou(one: Mask, other: Mask): number {
  let both = 0
  let either = 0
  for (let y = 0; y < one.height; y++) {
    const row = Math.floor(((y + 0.5) / one.height) * other.height) * other.width
    for (let x = 0; x < one.width; x++) {
      const a = one.data[y * one.width + x]! >= 128
      const b = other.data[row + Math.floor(((x + 0.5) / one.width) * other.width)]! >= 128
      if (a && b) both++
      if (a || b) either++
    }
  }
  return either === 0 ? 1 : both / either
}

const ciede2000 = differenceCiede2000()
const asLab = ([l, a, b]: Lab) => ({ mode: 'lab65', l, a, b }) as const

function colourError({ truth, reading }: Read): number {
  const [read] = reading.colours
  if (!read) return Number.POSITIVE_INFINITY
  const least = nearlyLargest * truth.colours[0]!.share
  return Math.min(
    ...truth.colours
      .filter((colour) => colour.share >= least)
      .map((colour) => ciede2000(asLab(colour.lab), asLab(read.lab))),
  )
}

/** Whether a photo was measured by its sheet as it lies; null where it was not measured. */
function sheetRight({ truth, reading }: Read): boolean | null {
  if (!reading.scale) return null
  const { sheet, width, height } = truth
  if (!sheet || sheet.by !== reading.scale.by) return false
  const { corners } = reading.scale
  if (!corners) return sheet.whole
  const slack = sheet.whole
    ? cornerSlack * Math.max(width, height)
    : coveredSlack * shortestSide(sheet.corners)
  const near = (corner: readonly [number, number]) =>
    corners.some(([x, y]) => Math.hypot(x - corner[0], y - corner[1]) <= slack)
  return corners.length === 4 && sheet.corners.every(near)
}

const shortestSide = (corners: readonly (readonly [number, number])[]): number =>
  Math.min(
    ...corners.map(([x, y], n) => {
      const [u, v] = corners[(n + 1) % corners.length]!
      return Math.hypot(u - x, v - y)
    }),
  )

const lengths = ['garmentWidthIn', 'garmentLengthIn', 'graphicWidthIn', 'graphicHeightIn'] as const

function sizeErrors({ truth, reading }: Read): number[] {
  return lengths.flatMap((length) => {
    const told = truth.size?.[length]
    const read = reading.size?.[length]
    return told && read ? [Math.abs(read - told) / told] : []
  })
}

/** Holds readings against truths. */
export function score(all: readonly Read[]): Score {
  const sound = all.filter(({ truth }) => truth.fault === null)
  const rightPrint = ({ truth, reading }: Read) => reading.print?.class === truth.print
  const ofClass = (name: PrintClass) =>
    share(sound.filter(({ truth }) => truth.print === name).map(rightPrint))
  const byClass = Object.fromEntries(
    printClasses.map((name) => [name, ofClass(name)]),
  ) as Score['print']['byClass']
  const asked = Object.values(byClass).filter((part) => part !== null)
  const sure = sound.filter(({ reading }) => (reading.print?.confidence ?? 0) >= sureFrom)

  const masked = sound.filter(({ mask }) => mask)
  // Where masks are read at all, one that was not counts as missed altogether.
  const masks = masked.some(({ reading }) => reading.mask)
    ? masked.map(({ mask, reading }) => (reading.mask ? maskIou(mask!, reading.mask) : 0))
    : []
  const graphics = sound.flatMap(({ truth, reading }) =>
    truth.graphic ? [reading.graphic ? boxIou(truth.graphic, reading.graphic) : 0] : [],
  )
  const clear = sound.filter(({ truth }) => truth.sheet?.whole && truth.sheet.contrasts)
  const measured = sound.filter((read) => sheetRight(read) === true)
  const by = (kinds: readonly string[]) =>
    spread(measured.filter(({ truth }) => kinds.includes(truth.sheet!.by)).flatMap(sizeErrors))
  const names = (fault: Fault) => (read: Read) => read.reading.fitness.problems.includes(fault)

  return {
    photos: all.length,
    sound: sound.length,
    print: {
      right: share(sound.map(rightPrint)),
      byClass,
      worst: asked.length === 0 ? null : Math.min(...asked),
      sure: share(sound.map((read) => sure.includes(read))),
      rightWhereSure: share(sure.map(rightPrint)),
    },
    maskIou: masks.length === 0 ? null : masks.reduce((sum, iou) => sum + iou, 0) / masks.length,
    graphic:
      graphics.length === 0
        ? null
        : {
            count: graphics.length,
            medianIou: quantile(graphics, 0.5),
            half: share(graphics.map((iou) => iou >= 0.5))!,
          },
    colour: spread(sound.filter(({ truth }) => truth.colours.length > 0).map(colourError)),
    value: share(sound.map(({ truth, reading }) => reading.value === truth.value)),
    fitness: Object.fromEntries(
      faults.map((fault) => [
        fault,
        {
          caught: share(all.filter(({ truth }) => truth.fault === fault).map(names(fault))),
          falseAlarms: share(sound.map(names(fault))),
        },
      ]),
    ) as Score['fitness'],
    sheet: {
      found: share(clear.map((read) => sheetRight(read) === true)),
      asked: clear.length,
      wrong: all.filter((read) => sheetRight(read) === false).map(({ truth }) => truth.file),
    },
    size: { paper: by(['letter', 'a4']), card: by(['id1']) },
    misread: sound
      .filter((read) => !rightPrint(read))
      .map(({ truth, reading }) => ({
        file: truth.file,
        print: truth.print!,
        as: reading.print?.class ?? null,
        confidence: reading.print?.confidence ?? 0,
      })),
  }
}

import { faults } from '../../src/photo/look/looked.ts'
import type { Net } from '../../src/photo/look/net.ts'
import { groupSigns } from '../../src/photo/look/print-signs.ts'
import { likelyPictures, type PrintNets } from '../../src/photo/look/read-print.ts'
import { learn } from './learn.ts'
import { printClasses } from './print.ts'
import type { Row } from './train-rows.ts'

type Sound = Required<Row>

const soundOf = (rows: readonly Row[]): Sound[] =>
  rows.filter((row): row is Sound => row.signs !== undefined)

const members = 5

/** What the nets of the class of print are asked of one garment, and which class it is. */
interface Asked {
  readonly row: Sound
  readonly signs: readonly number[]
}

/** The nets that judge groups of print and the class of print. */
export function trainPrint(rows: readonly Row[]): PrintNets {
  const sound = soundOf(rows)
  const halves = [0, 1].map((half) => sound.filter((_, n) => n % 2 === half))
  // Each half is judged by a net that has not seen it, as any new photo is.
  const signs = halves.flatMap((half, n) => {
    const net = trainPictures(halves[1 - n]!)
    return half.map((row) => ({ row, signs: signsOf(row, net) }))
  })
  const pictures = trainPictures(sound)
  return { pictures, boxes: pictures, classes: trainClasses(signs) }
}

/**
 * Those that there are but for the oldest so many, with new ones beside them that have learnt from garments that the
 * others have not seen.
 */
export function morePrint(
  rows: readonly Row[],
  { pictures, classes }: PrintNets,
  oldest: number,
): PrintNets {
  const sound = soundOf(rows)
  const asked = sound.map((row) => ({ row, signs: signsOf(row, pictures) }))
  return {
    pictures,
    boxes: trainPictures(sound),
    classes: [...classes.slice(oldest), ...trainClasses(asked)],
  }
}

function trainClasses(asked: readonly Asked[]): Net[] {
  const lesson = {
    inputs: Float32Array.from(asked.flatMap(({ signs }) => signs)),
    width: asked[0]!.signs.length,
    wanted: asked.map(({ row }) => printClasses.indexOf(row.cls!)),
  }
  return Array.from({ length: members }, (_, n) =>
    learn(lesson, {
      hidden: [32],
      outputs: printClasses.length,
      rounds: 60,
      batch: 32,
      seed: 17 + 31 * n,
      noise: 0.5,
      decay: 0.05,
    }),
  )
}

const signsOf = ({ signs, groups, area, waves }: Sound, pictures: Net): number[] => [
  ...signs,
  ...groupSigns(groups, area, likelyPictures(groups, pictures)),
  ...waves,
]

/** Which groups are pictures: those of garments with one and of garments with none. */
function trainPictures(rows: readonly Sound[]): Net {
  const groups = rows
    .filter(({ cls }) => cls === 'single' || cls === 'solid')
    .flatMap((row) => row.groups)
  return learn(
    {
      inputs: Float32Array.from(groups.flatMap(({ signs }) => signs)),
      width: groups[0]!.signs.length,
      wanted: groups.map(({ iou }) => iou),
      // There are many more that are none.
      weights: groups.map(({ iou }) => (iou > 0.5 ? 3 : 1)),
    },
    { hidden: [20, 8], outputs: 1, rounds: 25, batch: 32, seed: 5, noise: 0.1, decay: 0.005 },
  )
}

/** The nets that tell which fault a photo has; the first output of each says none. */
export function trainFitness(rows: readonly Row[]): Net[] {
  const lesson = {
    inputs: Float32Array.from(rows.flatMap(({ fitness }) => fitness)),
    width: rows[0]!.fitness.length,
    wanted: rows.map(({ fault }) => (fault === '' ? 0 : 1 + faults.indexOf(fault))),
    weights: rows.map(({ fault }) => (fault === '' ? 1 : 2)),
  }
  return Array.from({ length: members }, (_, n) =>
    learn(lesson, {
      hidden: [24, 12],
      outputs: 1 + faults.length,
      rounds: 60,
      batch: 32,
      seed: 3 + 31 * n,
      noise: 0.3,
      decay: 0.02,
    }),
  )
}

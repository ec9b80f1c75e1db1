import type { Base } from './base.ts'
import { type Group, groupsOffRim, leavesThin } from './groups.ts'
import { type PrintClass, printClasses } from './looked.ts'
import { type Net, runner } from './net.ts'
import type { LabPlanes } from './planes.ts'
import { clothSigns, groupSigns, type Print, printOf } from './print-signs.ts'

/**
 * `pictures` judges groups of print for `classes`, which judge the print: several, whose mean is more often right. Each
 * takes as many of the signs, from the first on, as it has learnt from. `boxes` judges groups as `pictures` does, has
 * learnt from later photos, and says whose box is told: the classes know the answers of the first alone.
 */
export interface PrintNets {
  readonly pictures: Net
  readonly boxes: Net
  readonly classes: readonly Net[]
}

export interface PrintRead {
  readonly print: Print
  readonly scores: Readonly<Record<PrintClass, number>>
  readonly class: PrintClass
  readonly confidence: number
  /** The group that is likeliest to be one picture; none where the garment hardly carries one. */
  readonly picture: Group | null
}

/** What is known of a garment that was set upright. */
export interface ReadyGarment {
  readonly planes: LabPlanes
  readonly base: Base
  /** What its waves tell, as large as it was photographed. */
  readonly waves: readonly number[]
}

/** As likely must one picture be for it to be told where another print is likelier: a person may say that it is one. */
const secondThought = 0.25

/** Which class of print a garment carries. */
export function readPrint({ planes, base, waves }: ReadyGarment, nets: PrintNets): PrintRead {
  const print = printOf(planes, base)
  const { groups, strength } = print
  const pictures = likelyPictures(groups, nets.pictures)
  const area = base.inner.reduce((sum, one) => sum + one, 0)
  const scores = classScores(
    [...clothSigns(planes, base, print), ...groupSigns(groups, area, pictures), ...waves],
    nets.classes,
  )
  const best = scores.indexOf(Math.max(...scores))
  const single = printClasses.indexOf('single')
  const isTold = best === single || scores[single]! >= secondThought
  return {
    print,
    scores: Object.fromEntries(
      printClasses.map((name, n) => [name, scores[n]!]),
    ) as PrintRead['scores'],
    class: printClasses[best]!,
    confidence: scores[best]!,
    picture: isTold
      ? pictureAmong([...groups, ...groupsOffRim({ planes, base, strength })], nets.boxes)
      : null,
  }
}

/**
 * A picture's own lines are thin as well: of the doubt that is left with all of it, what leaves them out must take
 * this share away.
 */
const lessDoubt = 0.3

function pictureAmong(groups: readonly Group[], net: Net): Group | null {
  const likely = likelyPictures(groups, net)
  const best = (thinned: boolean): number =>
    groups.reduce(
      (best, { pass }, n) =>
        leavesThin(pass) === thinned && likely[n]! > (likely[best] ?? 0) ? n : best,
      -1,
    )
  const [whole, thinned] = [best(false), best(true)]
  const [share, least] = [likely[thinned] ?? 0, likely[whole] ?? 0]
  return groups[share > least + lessDoubt * (1 - least) ? thinned : whole] ?? null
}

/** How likely each group is one picture, 0 to 1. */
export function likelyPictures(groups: readonly Pick<Group, 'signs'>[], net: Net): number[] {
  const run = runner(net)
  return groups.map(({ signs }) => 1 / (1 + Math.exp(-run(signs)[0]!)))
}

/** The nets are surer than they are right: of photos that they had not learnt from, this brings both together. */
const modesty = 2.5

/** The mean of what the nets think likely, class by class, taken back to what it is worth. */
export function classScores(signs: readonly number[], nets: readonly Net[]): number[] {
  const sums = printClasses.map(() => 0)
  for (const net of nets) {
    for (const [n, share] of softmax(runner(net)(signs)).entries()) sums[n]! += share / nets.length
  }
  const raised = sums.map((sum) => sum ** (1 / modesty))
  const whole = raised.reduce((sum, one) => sum + one, 0)
  return raised.map((one) => one / whole)
}

/** Scores as shares of one. */
export function softmax(scores: ArrayLike<number>): number[] {
  const all = Array.from(scores)
  const most = Math.max(...all)
  const raised = all.map((score) => Math.exp(score - most))
  const whole = raised.reduce((sum, one) => sum + one, 0)
  return raised.map((one) => one / whole)
}

import { expect, test } from 'vitest'
import { demand, designOf } from '../../src/quilt/design.ts'
import { seamsIn, thread } from '../../src/quilt/thread.ts'
import { layouts } from '../help/knowledge.ts'

const layout = (id: string) => layouts.find((one) => one.id === id)!
const seams = (id: string) => seamsIn(layout(id), demand(designOf(layout(id), 'throw', [])))

// Counted seam by seam, each as long as its pieces are cut where it is sewn: the formula takes every
// piece as cut, and so a little more where rows are joined that have shrunk by their seams.
test('seams of nine by eleven squares, against each seam counted', () => {
  const inRows = 11 * 8 * 6.5
  const betweenRows = 10 * (9 * 6 + 0.5)
  expect(seams('plain-squares')).toBeGreaterThanOrEqual(inRows + betweenRows)
  expect(seams('plain-squares')).toBeLessThan((inRows + betweenRows) * 1.05)
})

test('seams of quartered blocks are sewn twice', () => {
  // 5 in squares: two seams in each of three rows, two between rows of 14 in, then two of 13 1/2 in.
  const inBlock = 6 * 5 + 2 * 14 + 2 * 13.5
  const between = 3 * 5 * 13.5 + 4 * (4 * 13 + 0.5)
  const counted = 20 * inBlock + between
  expect(seams('quartered-nine-patch')).toBeGreaterThanOrEqual(counted)
  expect(seams('quartered-nine-patch')).toBeLessThan(counted * 1.1)
})

test('two and a half times the seams, and a tenth more', () => {
  // 10 m of seams; 40 × 60 in quilted 2 in apart, 1200 in; sewn round twice, 400 in.
  const { piecingM, quiltingM, bindingM, threadM } = thread({ w: 40, h: 60 }, 10 / 0.0254)
  expect(piecingM).toBeCloseTo(10)
  expect(quiltingM).toBeCloseTo(30.48)
  expect(bindingM).toBeCloseTo(10.16)
  expect(threadM).toBeCloseTo((10 + 30.48 + 10.16) * 2.5 * 1.1)
})

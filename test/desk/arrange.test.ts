import { expect, test } from 'vitest'
import {
  keepPiece,
  layAnew,
  letGo,
  lyingAs,
  swapPieces,
  type Touch,
} from '../../src/desk/arrange.ts'
import { type Arranged, arrangedOf, fixedIn } from '../../src/desk/arranged.ts'
import { planMarksOf } from '../../src/desk/plan-marks.ts'
import { type LaidDesign, liesThere, pieceAt } from '../../src/intake/laid.ts'
import { designOf } from '../../src/quilt/design.ts'
import { gridOf } from '../../src/quilt/place/grid.ts'
import { addStaff, queuePile } from '../help/desk.ts'
import { layouts } from '../help/knowledge.ts'
import { eachStore } from '../help/stores.ts'

const squares = layouts.find(({ id }) => id === 'plain-squares')!
const design = designOf(squares, 'crib', [])
const grid = gridOf(design)
const wished = { layout: squares.id, size: 'crib' } as const

/** Garments 1 and 2 by turns among the dark squares, bought cloth among the light ones but for one. */
const cells = grid.pieces.map(({ role }, n) =>
  role === 'focal' ? 1 + (n % 4 < 2 ? 0 : 1) : n === 1 ? 2 : null,
)
const first: LaidDesign = {
  design,
  grid,
  cells,
  job: { pieces: grid.pieces, given: [], colours: [], cloth: {}, seed: 0, pins: [] },
}

/** What the laying makes of what is fixed, where the plan is still the same: nothing else moves. */
function layBy(arranged: Arranged, quilt = 0): LaidDesign {
  const fixed = fixedIn(arranged).filter((one) => one.quilt === quilt)
  const after = [...first.cells]
  for (const one of fixed) after[pieceAt(grid, one)] = one.garment
  return { ...first, cells: after }
}

const dark = (garment: number): number[] =>
  grid.pieces.flatMap(({ role }, n) => (role === 'focal' && cells[n] === garment ? [n] : []))
const [one, other] = [dark(1)[2]!, dark(2)[3]!]
/** A bought piece and a garment's, both among the light squares. */
const [bought, light] = [3, 1]

eachStore('a quilt that staff arrange', (store) => {
  let now = 1_000
  const at = { store: null as never, clock: () => now }

  async function desk() {
    now = 1_000
    const pile = await queuePile(store().db, { number: 1, grades: ['sound', 'sound'] })
    const marta = await addStaff(store().db, 'Marta')
    const ivo = await addStaff(store().db, 'Ivo')
    const place = { ...at, store: store() }
    const marks = () => planMarksOf(store().db, pile)
    const arranged = async () => arrangedOf(await marks(), wished)
    /** As somebody sees the quilt now. */
    const hand = async (over: Partial<Touch> = {}): Promise<Touch> => {
      const all = await arranged()
      const lying = layBy(all)
      const seen = all.seen.get(0) ?? 0
      return { quilt: 0, lying, who: marta, shown: lyingAs(lying), seen, ...over }
    }
    const pins = async () =>
      (await arranged()).pins.map(({ x, y, garment, by }) => [pieceAt(grid, { x, y }), garment, by])
    return { pile, marta, ivo, place, marks, arranged, hand, pins }
  }

  test('a change of two moves these two and no other, and pins them by who did it', async () => {
    const { pile, place, hand, arranged, pins, ivo } = await desk()
    await swapPieces(place, pile, await hand({ who: ivo }), [one, other])
    const after = layBy(await arranged()).cells
    expect(after.flatMap((garment, n) => (garment === cells[n] ? [] : [n]))).toEqual(
      [one, other].sort((a, b) => a - b),
    )
    expect([after[one], after[other]]).toEqual([2, 1])
    expect(await pins()).toEqual([
      [one, 2, 'Ivo'],
      [other, 1, 'Ivo'],
    ])
    expect(fixedIn(await arranged())).toHaveLength(grid.pieces.length)
  })

  test('bought cloth changes places as garments do', async () => {
    const { pile, place, hand, arranged } = await desk()
    await swapPieces(place, pile, await hand(), [bought, light])
    const after = layBy(await arranged()).cells
    expect([after[bought], after[light]]).toEqual([2, null])
  })

  test('a second change goes on from the first, and the same once more changes nothing', async () => {
    const { pile, place, hand, arranged, marks, pins } = await desk()
    const sent = await hand()
    await swapPieces(place, pile, sent, [one, other])
    const kept = (await marks()).length
    // The same form, pressed twice: by now the quilt lies as it asks.
    await swapPieces(place, pile, { ...(await hand()), ...pickShown(sent) }, [one, other])
    expect((await marks()).length).toBe(kept)
    const third = dark(2)[5]!
    now = 2_000
    await swapPieces(place, pile, await hand(), [one, dark(1)[4]!])
    await swapPieces(place, pile, await hand(), [other, third])
    const after = layBy(await arranged()).cells
    expect([after[one], after[dark(1)[4]!], after[other], after[third]]).toEqual([1, 2, 2, 1])
    expect((await pins()).map(([piece]) => piece).sort()).toEqual(
      [one, dark(1)[4]!, other, third].sort(),
    )
  })

  test('a pin keeps the whole quilt as it lies, and is let go without moving anything', async () => {
    const { pile, place, hand, arranged, pins, marks } = await desk()
    await keepPiece(place, pile, await hand(), one)
    await keepPiece(place, pile, await hand(), one)
    expect(await pins()).toEqual([[one, 1, 'Marta']])
    expect((await arranged()).kept.get(0)!.pieces).toHaveLength(grid.pieces.length)
    const { id } = (await arranged()).pins[0]!
    const before = await hand()
    now = 3_000
    await letGo(place, pile, before, id)
    await letGo(place, pile, before, id)
    expect(await pins()).toEqual([])
    expect(layBy(await arranged()).cells).toEqual(cells)
    expect((await marks()).filter(({ kind }) => kind === 'pin')).toMatchObject([
      { undone: { at: 3_000, by: 'Marta' } },
    ])
    expect((await marks()).filter(({ kind }) => kind === 'lay')).toHaveLength(1)
  })

  test('laid anew, the rest or all of it', async () => {
    const { pile, place, hand, arranged, marks } = await desk()
    await swapPieces(place, pile, await hand(), [one, other])
    await layAnew(place, pile, await hand(), { all: false })
    expect(fixedIn(await arranged()).map(({ garment }) => garment)).toEqual([2, 1])
    const before = await hand()
    await layAnew(place, pile, before, { all: true })
    await layAnew(place, pile, before, { all: true })
    expect(fixedIn(await arranged())).toEqual([])
    expect((await marks()).every(({ undone }) => undone !== null)).toBe(true)
  })

  test('whoever did not see what a colleague did changes nothing', async () => {
    const { pile, place, hand, ivo, pins, arranged } = await desk()
    const stale = await hand({ who: ivo })
    await keepPiece(place, pile, await hand(), one)
    const { id } = (await arranged()).pins[0]!
    const meanwhile = { code: 'decided_meanwhile' }
    await expect(keepPiece(place, pile, stale, other)).rejects.toMatchObject(meanwhile)
    await expect(swapPieces(place, pile, stale, [one, other])).rejects.toMatchObject(meanwhile)
    await expect(letGo(place, pile, stale, id)).rejects.toMatchObject(meanwhile)
    await expect(layAnew(place, pile, stale, { all: true })).rejects.toMatchObject(meanwhile)
    expect(await pins()).toEqual([[one, 1, 'Marta']])
  })

  test('a quilt that lies otherwise than was shown is not touched', async () => {
    const { pile, place, hand, marks } = await desk()
    const moved = { ...first, cells: first.cells.with(one, 2).with(dark(2)[0]!, 1) }
    const sent = await hand({ lying: moved })
    const changed = { code: 'quilt_changed' }
    await expect(swapPieces(place, pile, sent, [one, dark(1)[5]!])).rejects.toMatchObject(changed)
    await expect(keepPiece(place, pile, sent, one)).rejects.toMatchObject(changed)
    await expect(letGo(place, pile, sent, 'any')).rejects.toMatchObject(changed)
    expect(await marks()).toEqual([])
  })

  test('two at once take turns: one of them is told', async () => {
    const { pile, place, hand, ivo, pins } = await desk()
    const [mine, theirs] = [await hand(), await hand({ who: ivo })]
    const both = await Promise.allSettled([
      keepPiece(place, pile, mine, one),
      keepPiece(place, pile, theirs, other),
    ])
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(await pins()).toHaveLength(1)
  })

  test('pieces of another part, and pieces that are not there, change with nothing', async () => {
    const { pile, place, hand, marks } = await desk()
    const sent = await hand()
    const unlike = { code: 'pieces_unlike' }
    await expect(swapPieces(place, pile, sent, [one, light])).rejects.toMatchObject(unlike)
    const gone = { code: 'not_found' }
    await expect(swapPieces(place, pile, sent, [one, 54])).rejects.toMatchObject(gone)
    await expect(swapPieces(place, pile, sent, [-1, one])).rejects.toMatchObject(gone)
    await expect(keepPiece(place, pile, sent, 9_999)).rejects.toMatchObject(gone)
    await expect(letGo(place, pile, sent, 'nowhere')).rejects.toMatchObject(gone)
    await swapPieces(place, pile, sent, [one, dark(1)[0]!])
    await swapPieces(place, pile, sent, [one, one])
    expect(await marks()).toEqual([])
  })

  test('a pin is of its own pile, quilt, layout and size', async () => {
    const { pile, place, hand, marks, arranged } = await desk()
    await keepPiece(place, pile, await hand(), one)
    const { id } = (await arranged()).pins[0]!
    const gone = { code: 'not_found' }
    const second = await hand({ quilt: 1, seen: 0 })
    await expect(letGo(place, pile, second, id)).rejects.toMatchObject(gone)
    await keepPiece(place, pile, second, other)
    expect((await arranged()).kept.size).toBe(2)
    const neighbour = await queuePile(store().db, { number: 2, grades: ['sound'] })
    await expect(letGo(place, neighbour, await hand(), id)).rejects.toMatchObject(gone)
    expect(await planMarksOf(store().db, neighbour)).toEqual([])
    for (const other of [
      { layout: squares.id, size: 'throw' },
      { layout: 'framed-panels', size: 'crib' },
    ] as const) {
      const elsewhere = arrangedOf(await marks(), other)
      expect(elsewhere).toMatchObject({ pins: [], elsewhere: 2 })
      expect([elsewhere.kept.size, elsewhere.seen.size]).toEqual([0, 0])
    }
    await store().db.updateTable('pile').set({ status: 'open' }).execute()
    await expect(keepPiece(place, pile, await hand(), other)).rejects.toMatchObject(gone)
  })

  test('what holds no longer is known by where it lies', async () => {
    const { pile, place, hand, arranged } = await desk()
    await swapPieces(place, pile, await hand(), [one, other])
    const { pins } = await arranged()
    const lying = layBy(await arranged())
    expect(pins.map((pin) => liesThere(lying, pin))).toEqual([true, true])
    expect(pins.map((pin) => liesThere(first, pin))).toEqual([false, false])
    const [pin] = pins
    expect(liesThere(lying, { ...pin!, x: pin!.x + 1 })).toBe(false)
    expect(liesThere(lying, { ...pin!, x: -6, garment: null })).toBe(false)
  })
})

/** What a form that was sent before says of what its page showed. */
const pickShown = ({ shown, seen }: Touch) => ({ shown, seen })

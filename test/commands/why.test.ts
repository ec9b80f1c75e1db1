import { describe, expect, test } from 'vitest'
import { refusal, runHere } from '../help/command.ts'
import { plainShirt } from '../help/garments.ts'
import { givenFiles } from '../help/given-files.ts'
import { tables } from '../help/knowledge.ts'

const { file } = givenFiles()

async function ask(verb: 'grade' | 'why', garment: object, recipient = 'adult') {
  const { code, stdout, stderr } = await runHere([
    verb,
    file('asked.json', { garment, pile: { recipient } }),
  ])
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
  expect(stdout.split('\n')).toHaveLength(2)
  return JSON.parse(stdout)
}

const rowOf = (table: string, id: string) =>
  tables.find((one) => one.table === table)!.rows.find((row) => row.id === id)

const garments: [what: string, garment: object][] = [
  ['a plain shirt', plainShirt],
  ['a stretchy shirt with a screen print', { ...plainShirt, stretch: 'much', printMake: 'screen' }],
  ['a shattered silk', { ...plainShirt, wear: 'shattered', weight: 'fine', iron: 'cool' }],
  ['mouldy fur', { ...plainShirt, surface: 'fur', soil: 'mould' }],
  ['a garment nobody knows', {}],
]

describe('why', () => {
  test.each(garments)('says of %s what grade says, and which rows did', async (_, garment) => {
    const [graded, told] = [await ask('grade', garment), await ask('why', garment)]
    expect(told.grade).toBe(graded.grade)
    expect(told.press).toEqual(graded.press)
    expect(told.flags.map(({ row }: { row: string }) => row)).toEqual(
      graded.flags.map(({ code }: { code: string }) => code),
    )
    expect(told.layouts.map(({ step, ...fit }: { step: unknown }) => fit)).toEqual(graded.layouts)
  })

  test.each(garments)('names rows of %s as they stand in the tables', async (_, garment) => {
    const told = await ask('why', garment)
    const named: [table: string, steps: { row: string }[]][] = [
      ['flags', told.flags],
      ['limits', told.ceiling.limits],
      ['permit', [told.permit]],
      ['backing', [told.backing]],
      ['testing', [told.testing]],
      ['cautions', told.cautions],
      ['layout-fit', told.layouts.map(({ step }: { step: object }) => step)],
    ]
    for (const [table, steps] of named) {
      for (const { row, found, ...step } of steps as { row: string; found: object }[]) {
        const { id, ...rest } = rowOf(table, row)!
        expect({ id, ...step }).toEqual({ id: row, ...rest })
        expect(Object.keys(found)).toEqual(Object.keys(rest.when))
        expect(told.facts).toMatchObject('setting' in found ? {} : found)
      }
    }
  })

  test.each(garments)('the ceiling of %s is the lowest of the limits shown', async (_, garment) => {
    const { ceiling } = await ask('why', garment)
    const limits: (number | null)[] = ceiling.limits.map(
      ({ give }: { give: { limitC: number | null } }) => give.limitC,
    )
    expect(limits.length).toBeGreaterThan(1)
    expect(ceiling.ceilingC ?? 0).toBe(Math.min(...limits.map((limit) => limit ?? 0)))
    const setter = ceiling.limits.find(({ row }: { row: string }) => row === ceiling.row)
    expect(setter.give).toEqual({ limitC: ceiling.ceilingC, setBy: ceiling.setBy })
  })

  test('holds the sole of each interfacing, with 10 °C to spare, against the ceiling', async () => {
    const shirt = { ...plainShirt, stretch: 'much', printMake: 'sublimated' }
    const { interfacing } = await ask('why', shirt)
    expect(interfacing).toMatchObject({ wanted: true, ceilingC: 125, chosen: 'cool-light' })
    expect(interfacing.classes.map((it: Record<string, unknown>) => [it.class, it.needsC])).toEqual(
      [
        ['cool-light', 125],
        ['light', 150],
        ['firm', 180],
      ],
    )
    expect(interfacing.classes.map((it: Record<string, unknown>) => it.coolEnough)).toEqual([
      true,
      false,
      false,
    ])
  })

  test('says what could better it, with what that hangs on, and nothing of a sound one', async () => {
    const unlabelled = {
      ...plainShirt,
      kind: 'tshirt',
      surface: 'knit',
      stretch: 'little',
      heat: 'unknown',
      iron: 'missing',
    }
    const { better, together } = await ask('why', unlabelled)
    expect(together).toBeNull()
    expect(better).toHaveLength(1)
    expect(better[0]).toMatchObject({
      act: { act: 'read-label', question: 'label', source: 'common practice, no source' },
      now: { heat: 'unknown', iron: 'missing' },
      gains: ['grade', 'backing', 'heat'],
    })
    const turned = await ask('grade', { ...unlabelled, ...better[0].best.facts })
    expect(turned).toMatchObject({ grade: 'sound', press: { method: 'fuse', backing: 'fused' } })
    expect((await ask('why', plainShirt)).better).toEqual([])
  })

  test('a sound garment has no row that sets its grade, another has', async () => {
    expect((await ask('why', plainShirt)).setBy).toEqual([])
    const told = await ask('why', { ...plainShirt, soil: 'mould' })
    expect(told.setBy.length).toBeGreaterThan(0)
    for (const code of told.setBy) {
      expect(rowOf('flags', code)!.give.severity).toBe(told.grade)
    }
  })

  test('prints a line a file for several, a refusal among them costing no other', async () => {
    const files = [
      file('shirt.json', { garment: plainShirt }),
      file('wrong.json', { garment: { wear: 'eaten' } }),
      file('broken.json', '{"garment":'),
      file('empty.json', { garment: {} }),
    ]
    const { code, stdout, stderr } = await runHere(['why', ...files])
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    const lines = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line))
    expect(lines.map((line) => [line.file, line.ok, line.error?.code])).toEqual([
      [files[0], true, undefined],
      [files[1], false, 'bad_input'],
      [files[2], false, 'bad_input'],
      [files[3], true, undefined],
    ])
  })

  test.each([
    ['no file', [], 'name a file'],
    ['a fact that is none', [{ garment: { heat: 'molten' } }], 'heat must be: hot, warm'],
    ['a list', [[]], 'garment must be: '],
  ])('refuses %s', async (_, contents, names) => {
    const files = contents.map((content) => file('bad.json', content))
    const refused = refusal(await runHere(['why', ...files]))
    expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'bad_input' })
    expect(refused.message).toContain(names)
  })
})

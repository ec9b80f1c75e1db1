import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { openStore } from '../../src/store/open.ts'
import { xmlProblem } from '../flow/xml.ts'
import { flowsFolder } from '../help/app.ts'
import { type Ran, refusal, run, runHere } from '../help/command.ts'
import { plainShirt } from '../help/garments.ts'
import { givenFiles } from '../help/given-files.ts'
import { readYaml } from '../help/knowledge.ts'

const { file, folder } = givenFiles()

/** The one JSON document of a command that worked. */
const answer = (ended: Ran) => {
  expect({ code: ended.code, stderr: ended.stderr }).toEqual({ code: 0, stderr: '' })
  expect(ended.stdout.split('\n')).toHaveLength(2)
  return JSON.parse(ended.stdout)
}

describe('a verb that is none', () => {
  test.each([[[]], [['sew']], [['__proto__']], [['constructor']], [['toString']]])(
    '%o is refused with those there are',
    async (args) => {
      const refused = refusal(await runHere(args))
      expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'unknown_verb' })
      expect(refused.message).toContain('serve, read-label, grade, check-flows')
    },
  )
})

describe('the built command', () => {
  test('ends with 2 and says why on the other stream', async () => {
    const refused = refusal(await run(['sew']))
    expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'unknown_verb' })
  })

  test('ends with 2 where the fault is in the owner’s files, with 1 where it is in the settings', async () => {
    const flows = refusal(await run(['serve'], { env: { FLOWS_DIR: folder() } }))
    expect(flows).toMatchObject({ exit: 2, stdout: '', code: 'flows_invalid' })
    const port = refusal(await run(['serve'], { env: { PORT: 'eighty' } }))
    expect(port).toMatchObject({ exit: 1, stdout: '', code: 'setting_invalid' })
  })
})

describe('read-words', () => {
  const line = "dad's blue flannel, large, 100 % cotton, hole at the elbow"

  test('tells what a line says, and reads it from standard input too', async () => {
    const given = answer(await runHere(['read-words', '--text', line]))
    expect(given).toMatchObject({
      facts: {
        kind: { value: 'button-shirt', sure: true, because: 'flannel' },
        size: { value: 'L', sure: true, because: 'large' },
        colour: { value: 'blue', sure: true, because: 'blue' },
        fibres: {
          value: [{ fibres: [{ fibre: 'cotton', percent: 100 }], total: 100, complete: true }],
          because: '100 % cotton',
        },
        wear: { value: 'holes', sure: true },
      },
      name: "dad's blue flannel",
    })
    expect(answer(await run(['read-words', '--text', '-'], { input: line }))).toEqual(given)
  })

  test('its facts are what grade takes', async () => {
    const { facts } = answer(await runHere(['read-words', '--text', line]))
    const garment = Object.fromEntries(
      Object.entries(facts as Record<string, { value: unknown }>).map(([fact, { value }]) => [
        fact,
        value,
      ]),
    )
    const graded = answer(await runHere(['grade', file('told.json', JSON.stringify({ garment }))]))
    expect(graded.flags.map(({ code }: { code: string }) => code)).toContain('holes')
  })

  test('of several files each is told, one that is missing costs no other', async () => {
    const ended = await runHere([
      'read-words',
      file('a.txt', 'red scarf'),
      'none.txt',
      file('b.txt', 'falda negra'),
    ])
    const [a, none, b] = ended.stdout
      .trim()
      .split('\n')
      .map((one) => JSON.parse(one))
    expect([ended.code, a.ok, none.ok, b.ok]).toEqual([0, true, false, true])
    expect([a.facts.kind.value, none.error.code, b.facts.kind.value]).toEqual([
      'scarf',
      'bad_input',
      'skirt',
    ])
  })

  test('an empty line tells nothing', async () => {
    expect(answer(await runHere(['read-words', '--text', '']))).toMatchObject({
      facts: {},
      name: '',
      unread: [],
    })
  })

  test.each([[['read-words']], [['read-words', '--text']], [['read-words', '--words', 'x']]])(
    '%o is refused',
    async (args) => {
      expect(refusal(await runHere(args))).toMatchObject({ exit: 2, stdout: '', code: 'bad_input' })
    },
  )
})

describe('read-label', () => {
  const reading = {
    blocks: [
      {
        section: null,
        fibres: [
          { fibre: 'cotton', percent: 60 },
          { fibre: 'polyester', percent: 40 },
        ],
        total: 100,
        complete: true,
      },
    ],
    iron: { level: 'cool', noSteam: false, notOnPrint: false, wrongSide: false },
    languages: ['en'],
    sure: true,
  }
  const words = '60% cotton 40% polyester\nCool iron'

  test('reads words from the command line and from standard input alike', async () => {
    const given = answer(await run(['read-label', '--text', words]))
    expect(given).toMatchObject(reading)
    expect(Object.keys(given)).toEqual(
      expect.arrayContaining([
        'blocks',
        'iron',
        'care',
        'languages',
        'confidence',
        'sure',
        'problems',
        'text',
      ]),
    )
    expect(answer(await run(['read-label', '--text', '-'], { input: words }))).toEqual(given)
  })

  test('is not sure of words that say nothing of cloth', async () => {
    const given = answer(await runHere(['read-label', '--text', 'made with love']))
    expect(given).toMatchObject({ blocks: [], sure: false, iron: { level: null } })
    expect(given.problems.length).toBeGreaterThan(0)
    for (const problem of given.problems) {
      expect(problem).toEqual({ code: expect.any(String), message: expect.stringMatching(/\.$/) })
    }
  })

  test('reads photos one after another, and a file that is none costs the others nothing', async () => {
    const label = 'test/photo/label.jpg'
    const cutOff = file('cut-off.jpg', '')
    writeFileSync(cutOff, readFileSync(label).subarray(0, 3000))
    const noPicture = file('words.jpg', '100% cotton')
    const ran = await runHere(['read-label', noPicture, cutOff, 'not-there.jpg', 'test', label])
    expect(ran).toMatchObject({ code: 0, stderr: '' })
    const told = ran.stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line))
    expect(told.map(({ file, ok }) => [file, ok])).toEqual([
      [noPicture, false],
      [cutOff, false],
      ['not-there.jpg', false],
      ['test', false],
      [label, true],
    ])
    for (const { error } of told.slice(0, -1))
      expect(error).toEqual({ code: expect.any(String), message: expect.stringMatching(/\S/) })
    expect(told.at(-1)).toMatchObject({
      blocks: [
        {
          fibres: [
            { fibre: 'cotton', percent: 92 },
            { fibre: 'elastane', percent: 8 },
          ],
          total: 100,
        },
      ],
      iron: { level: 'warm' },
      sure: true,
    })
  })

  test.each([[['read-label']], [['read-label', '--text']], [['read-label', '--words', 'x']]])(
    '%o is told how to use it',
    async (args) => {
      const refused = refusal(await runHere(args))
      expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'bad_input' })
      expect(refused.message).toContain('--text')
    },
  )
})

describe('grade', () => {
  const shirt = () =>
    file('shirt.json', { garment: { ...plainShirt, odd: 1 }, pile: { recipient: 'adult' } })

  test('gives grade, flags, press plan and layouts of one garment', async () => {
    const given = answer(await runHere(['grade', shirt()]))
    expect(given).toMatchObject({
      grade: 'sound',
      press: {
        method: expect.any(String),
        backing: expect.any(String),
        testFirst: expect.any(Boolean),
      },
    })
    expect(Object.keys(given).sort()).toEqual(['flags', 'grade', 'layouts', 'press'])
    expect(given.layouts.length).toBeGreaterThan(3)
    for (const flag of given.flags) {
      expect(flag).toMatchObject({
        code: expect.any(String),
        severity: expect.stringMatching(/^(note|care|eyes|home)$/),
        for: expect.any(Array),
        message: expect.stringMatching(/\w.*\.$/),
        because: expect.any(Array),
      })
    }
  })

  test('takes what is not told as not told', async () => {
    const given = answer(await runHere(['grade', file('empty.json', { garment: {} })]))
    expect(given.grade).toBe('eyes')
    expect(given.press.method).not.toMatch(/^fuse/)
  })

  test('prints a line a file for several, a refusal among them costing no other', async () => {
    const files = [
      shirt(),
      file('wrong.json', { garment: { wear: 'eaten' } }),
      file('broken.json', '{"garment":'),
      join(folder(), 'nowhere.json'),
      shirt(),
    ]
    const { code, stdout, stderr } = await runHere(['grade', ...files])
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    const lines = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line))
    expect(lines.map((line) => [line.file, line.ok, line.grade ?? line.error.code])).toEqual([
      [files[0], true, 'sound'],
      [files[1], false, 'bad_input'],
      [files[2], false, 'bad_input'],
      [files[3], false, 'bad_input'],
      [files[4], true, 'sound'],
    ])
    expect(lines[1].error.message).toBe('wear must be: sound, thin, holes, shattered, unknown')
    expect(Object.keys(lines[1])).toEqual(['file', 'ok', 'error'])
  })

  const bad: [what: string, content: unknown, names: string][] = [
    ['a fact with a value of its own', { garment: { heat: 'molten' } }, 'heat must be: hot, warm'],
    [
      'a recipient that is none',
      { garment: {}, pile: { recipient: 'cat' } },
      'recipient must be: adult',
    ],
    ['a layout that is none', { garment: {}, pile: { layout: '__proto__' } }, 'layout must be: '],
    [
      'fibres that are none',
      { garment: { fibres: [{ fibre: 'toString', percent: 100 }] } },
      'fibres must be: ',
    ],
    ['a list', [], 'garment must be: '],
    ['null', null, 'garment must be: '],
    ['no JSON', 'a shirt', 'no-json.json: '],
  ]
  test.each(bad)('refuses %s by its name', async (what, content, names) => {
    const refused = refusal(
      await runHere(['grade', file(`${what.replaceAll(' ', '-')}.json`, content)]),
    )
    expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'bad_input' })
    expect(refused.message.toLowerCase()).toContain(names)
  })

  test('without a file is told to name one', async () => {
    expect(refusal(await runHere(['grade']))).toMatchObject({
      exit: 2,
      message: 'file: name a file',
    })
  })
})

describe('check-flows', () => {
  test('counts what it checked', async () => {
    const given = answer(await runHere(['check-flows', '--json']))
    expect(given).toMatchObject({ ok: true, flows: 1, tables: 7 })
    for (const count of ['questions', 'longestPath', 'rows', 'combinations', 'statements']) {
      expect(given[count], count).toBeGreaterThan(9)
    }
  })

  test('tells the vocabulary and the figures of each table with --facts', async () => {
    const { seconds: _, ...plain } = answer(await runHere(['check-flows']))
    expect(plain.told).toBeUndefined()
    const {
      told,
      seconds: __,
      ...counts
    } = answer(await runHere(['check-flows', '--facts', '--json']))
    expect(counts).toEqual(plain)
    expect(told.facts.wear).toEqual(['sound', 'thin', 'holes', 'shattered', 'unknown'])
    const sumOf = (key: string) =>
      told.tables.reduce((sum: number, table: Record<string, number>) => sum + table[key]!, 0)
    expect(told.tables).toHaveLength(plain.tables)
    expect([sumOf('rows'), sumOf('combinations')]).toEqual([plain.rows, plain.combinations])
    expect(told.mustHold).toHaveLength(plain.statements)
    for (const { table, combinations, reads } of told.tables) {
      const { rows } = readYaml(`tables/${table}.yaml`) as { rows: { when: object }[] }
      const looked = new Set(rows.flatMap(({ when }) => Object.keys(when)))
      expect(reads, table).toEqual(expect.arrayContaining([...looked]))
      const sizes = [...looked].map((name) => {
        const domain = told.facts[name]
        return Array.isArray(domain) ? domain.length : domain.to - domain.from + 1
      })
      expect(combinations, table).toBe(sizes.reduce((product, size) => product * size, 1))
    }
  })

  test.each([['--fact'], ['--facts=yes'], ['flows'], ['']])('does not take %o', async (option) => {
    const refused = refusal(await runHere(['check-flows', '--json', option]))
    expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'bad_input' })
    expect(refused.message).toContain('check-flows [--facts] [--json]')
  })

  const spoilt = (change: (folder: string) => void) => {
    const copy = mkdtempSync(join(folder(), 'flows-'))
    cpSync(flowsFolder, copy, { recursive: true })
    change(copy)
    return runHere(['check-flows'], { FLOWS_DIR: copy })
  }
  const change = (path: string, before: string, after: string) => (copy: string) => {
    const text = readFileSync(join(copy, path), 'utf8')
    if (!text.includes(before)) throw new Error(`${path} has no "${before}"`)
    writeFileSync(join(copy, path), text.replace(before, after))
  }

  test.each([
    [
      'an edge to nowhere',
      change('intake/flow.yaml', 'to: quilt_count', 'to: quilt_cuont'),
      'intake/flow.yaml',
      /quilt_cuont/,
    ],
    [
      'a file that is no YAML',
      change('intake/flow.yaml', 'parts:', 'parts: ]['),
      'intake/flow.yaml',
      /./,
    ],
    [
      'a file that is gone',
      (copy: string) => rmSync(join(copy, 'shop.yaml')),
      'shop.yaml',
      /missing/,
    ],
    [
      'a row that nothing reaches',
      change('tables/limits.yaml', 'iron: cool', 'iron: tepid'),
      'tables/limits.yaml',
      /tepid/,
    ],
  ] as const)('finds %s, by file and line, with exit 2', async (_, spoil, path, message) => {
    const { code, stdout, stderr } = await spoilt(spoil)
    expect({ code, stderr }).toEqual({ code: 2, stderr: '' })
    const { ok, findings } = JSON.parse(stdout)
    expect(ok).toBe(false)
    expect(findings[0].file).toContain(path)
    expect(findings[0].line).toBeGreaterThan(0)
    expect(findings[0]).toMatchObject({
      rule: expect.any(String),
      message: expect.stringMatching(message),
    })
  })
})

describe('draw-flows', () => {
  test('writes one SVG and one text of the flow, with every question in both', async () => {
    const given = answer(await runHere(['draw-flows', join(folder(), 'drawn')]))
    expect(given).toMatchObject({ ok: true, flow: 'intake' })
    const svg = readFileSync(given.svg, 'utf8')
    const text = readFileSync(given.text, 'utf8')
    expect(xmlProblem(svg)).toBeNull()
    for (const question of ['recipient', 'label_check', 'graphic_size', 'last_word']) {
      expect(text).toContain(question)
    }
  })

  test('without a folder is told to name one', async () => {
    expect(refusal(await runHere(['draw-flows']))).toMatchObject({ exit: 2, code: 'bad_input' })
  })
})

describe('account add', () => {
  const password = 'a long enough pass-phrase'
  const dataDir = () => join(folder(), 'data')
  const add = (args: readonly string[], input = `${password}\n`) =>
    run(['account', ...args], { input, env: { DATA_DIR: dataDir() } })
  const ada = ['add', '--email', 'Ada@Workshop.example', '--name', 'Ada Thimble']

  test('makes an account whose password came on standard input and is kept nowhere', async () => {
    expect(answer(await add(ada))).toMatchObject({ ok: true, role: 'staff' })
    const store = await openStore({ dataDir: dataDir() })
    const [row] = await store.db.selectFrom('account').selectAll().execute()
    await store.close()
    expect(row).toMatchObject({ email: 'ada@workshop.example', name: 'Ada Thimble', role: 'staff' })
    expect(row!.password_hash).toMatch(/^\$argon2id\$/)
    expect(JSON.stringify(row)).not.toContain(password)
  })

  test.each([
    ['the same address', ada, undefined, 'email_taken'],
    [
      'a short password',
      [...ada.slice(0, 2), 'b@c.example', ...ada.slice(3)],
      'short\n',
      'password_too_short',
    ],
    ['no password', [...ada.slice(0, 2), 'b@c.example', ...ada.slice(3)], '', 'password_too_short'],
    [
      'an address that is none',
      [...ada.slice(0, 2), 'nowhere', ...ada.slice(3)],
      undefined,
      'email_not_valid',
    ],
  ])('refuses %s', async (_, args, input, code) => {
    const ended = await add(args, input)
    expect(refusal(ended)).toMatchObject({ exit: 2, stdout: '', code })
    expect(ended.stderr).not.toContain(password)
  })

  test.each([
    ['a role that is none', [...ada, '--role', 'king']],
    ['an option that is none', [...ada, '--password', password]],
    ['no name', ada.slice(0, 3)],
    ['another word', ['remove']],
  ])('told %s, says how to use it', async (_, args) => {
    const ran = await runHere(['account', ...args])
    expect(refusal(ran)).toMatchObject({ exit: 2, stdout: '', code: 'bad_input' })
    expect(ran.stderr).toContain('account add --email')
    expect(ran.stderr).not.toContain(password)
  })
})

describe('look', () => {
  test('takes a HEIC as a phone writes it', async () => {
    const ran = await runHere(['look', 'test/photo/shirt.heic'])
    expect(answer(ran)).toMatchObject({ width: 642, height: 482, print: { class: 'single' } })
  })
})

describe('a setting that is wrong', () => {
  test.each([
    ['PORT', 'eighty'],
    ['PORT', '70000'],
    ['DATABASE_URL', 'mysql://x/y'],
    ['PUBLIC_URL', 'workshop'],
    ['LOG_LEVEL', 'loud'],
    ['PHOTOS_URL', 'https://store.example/photos'],
    ['PHOTOS_URL', 's3://'],
    ['PHOTOS_URL', 's3://Bucket/photos'],
    ['PHOTOS_URL', 's3://bucket/../other'],
  ])('%s=%s stops the start by its name', async (name, value) => {
    const refused = refusal(await runHere(['serve'], { DATA_DIR: folder(), [name]: value }))
    expect(refused).toMatchObject({ exit: 1, stdout: '', code: 'setting_invalid' })
    expect(refused.message).toContain(name)
  })
})

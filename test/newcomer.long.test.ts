import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { openStore } from '../src/store/open.ts'
import { flowsFolder } from './help/app.ts'
import { addGarment, answerAll, pileAnswers, shirt } from './help/chat.ts'
import { type Ran, run, runHere } from './help/command.ts'
import { type RunningServer, startServer } from './help/server.ts'
import { Walker } from './help/walker.ts'

/** A shop's own copy of the flows, to be changed as its owner would: with an editor. */
class Files {
  readonly folder = mkdtempSync(join(tmpdir(), 'pieceworth-flows-'))

  constructor() {
    cpSync(flowsFolder, this.folder, { recursive: true })
  }

  read(file: string): string {
    return readFileSync(join(this.folder, file), 'utf8')
  }

  write(file: string, text: string): void {
    writeFileSync(join(this.folder, file), text)
  }

  /** Replaces what stands there once, or says that this test is lost. */
  change(file: string, before: string, after: string): void {
    const text = this.read(file)
    if (text.split(before).length !== 2) throw new Error(`${file} has "${before}" not once`)
    this.write(
      file,
      text.replace(before, () => after),
    )
  }

  append(file: string, text: string): void {
    this.write(file, this.read(file) + text)
  }

  remove(): void {
    rmSync(this.folder, { recursive: true, force: true })
  }
}

function addQuestion(files: Files): void {
  files.change(
    'intake/flow.yaml',
    '      - id: label\n',
    `      - id: lining
        kind: choice
        options: [lined, unlined]
        read_by: [staff]

      - id: label
`,
  )
  // A plain shirt is asked one thing more: who means that says so.
  files.change('intake/limits.yaml', '  most: 7\n', '  most: 8\n')
  files.append(
    'intake/words/en.yaml',
    `
lining:
  short: Lining
  ask: Does it have a lining?
  why: A lining comes out before we cut.
  options:
    lined: "Yes, it is lined"
    unlined: "No"
`,
  )
  files.append(
    'intake/words/es.yaml',
    `
lining:
  short: Forro
  ask: ¿Tiene forro?
  why: El forro se quita antes de cortar.
  options:
    lined: "Sí, tiene forro"
    unlined: "No"
`,
  )
}

function addLayout(files: Files): void {
  const squares = files.read('layouts/plain-squares.yaml')
  files.write('layouts/big-squares.yaml', squares.replace('plain-squares', 'big-squares'))
  files.change(
    'intake/flow.yaml',
    'plain-squares, framed-panels',
    'plain-squares, big-squares, framed-panels',
  )
  const words = {
    en: ['Big squares', 'Patchwork: big squares'],
    es: ['Cuadros grandes', 'Retazos: cuadros grandes'],
  }
  for (const [code, [name, option]] of Object.entries(words)) {
    files.change(
      `intake/words/${code}.yaml`,
      '    framed-panels: ',
      `    big-squares: "${option}"\n    framed-panels: `,
    )
    files.change(
      `tables/words/${code}.yaml`,
      '\n  framed-panels:\n',
      `\n  big-squares:\n    name: ${name}\n    sentence: ${name}.\n  framed-panels:\n`,
    )
  }
}

/** A later day's prices; the file before it stays as it was. */
const addPrices = (files: Files): void =>
  files.write(
    'rates/2026-02-01.yaml',
    `from: 2026-02-01
labour: { quilt_per_square_foot: 4900 }
piecing: { big-squares: 1.5 }
`,
  )

/** The built server, refusing to start on these files. */
const refusedStart = (files: Files, dataDir: string): Promise<Ran> =>
  run(['serve'], { env: { PORT: '0', DATA_DIR: dataDir, FLOWS_DIR: files.folder } })

describe('an owner who changes files alone', () => {
  let files: Files
  let server: RunningServer
  const likely = async (url: string, layout: string, language = 'en') => {
    const walker = await new Walker(url).start(language)
    await answerAll(walker, { ...pileAnswers, layout_wish: { value: layout } })
    await addGarment(walker, { ...shirt, lining: { value: 'lined' } })
    await walker.open(`${walker.pilePath}/review`)
    return walker
  }
  /** What quilting costs: the plan, which may be found before the page is shown or after, moves other lines alone. */
  const quiltingOf = (walker: Walker): number => {
    const rows = walker.root.querySelectorAll('.estimate .lines tr')
    const row = rows.find((one) => one.querySelector('th')?.text.startsWith('Quilting the layers'))
    return Number(/\$([\d,]+)/.exec(row!.querySelector('td')!.text)![1]!.replaceAll(',', ''))
  }

  beforeAll(async () => {
    files = new Files()
    addQuestion(files)
    addLayout(files)
    addPrices(files)
    server = await startServer({ env: { FLOWS_DIR: files.folder, LOG_LEVEL: 'error' } })
  })
  afterAll(async () => {
    await server?.remove()
    files.remove()
  })

  test.each([
    ['en', 'Does it have a lining?', 'Yes, it is lined'],
    ['es', '¿Tiene forro?', 'Sí, tiene forro'],
  ])('has a new question asked in %s', async (language, asks, option) => {
    const walker = await new Walker(server.url).start(language)
    await answerAll(walker, pileAnswers)
    await addGarment(walker, shirt, 'lining')
    expect(walker.text('h1')).toBe(asks)
    expect(walker.question).toMatchObject({ kind: 'choice', offered: ['lined', 'unlined'] })
    expect(walker.text('label[for=value-lined]')).toBe(option)
    await walker.send({ value: 'lined' })
    expect(walker.question?.id).toBe('label')
    expect(walker.text('dl.answers')).toContain(option)
  })

  test.each([
    ['en', 'Patchwork: big squares'],
    ['es', 'Retazos: cuadros grandes'],
  ])('has a new layout offered in %s, chosen and counted with', async (language, option) => {
    const walker = await new Walker(server.url).start(language)
    await answerAll(walker, pileAnswers, 'layout_wish')
    expect(walker.question?.offered).toContain('big-squares')
    expect(walker.text('label[for=value-big-squares]')).toBe(option)
    const chosen = await likely(server.url, 'big-squares', language)
    expect(chosen.root.querySelectorAll('.estimate .likely')).toHaveLength(1)
    expect(chosen.text('main')).toContain(option)
  })

  test('has a new price in the estimate, from its day on', async () => {
    const before = await startServer({ env: { LOG_LEVEL: 'error' } })
    try {
      const old = quiltingOf(await likely(before.url, 'plain-squares'))
      const now = quiltingOf(await likely(server.url, 'plain-squares'))
      // 49.00 instead of 9.00 for each of 25 square feet: a thousand more.
      expect(now - old).toBe(1_000)
    } finally {
      await before.remove()
    }
  })
})

describe('a change that cannot work refuses the start by name', () => {
  let files: Files
  let dataDir: string
  beforeEach(() => {
    files = new Files()
    dataDir = mkdtempSync(join(tmpdir(), 'pieceworth-data-'))
    return () => {
      files.remove()
      rmSync(dataDir, { recursive: true, force: true })
    }
  })

  const changes: [what: string, change: (files: Files) => void, names: RegExp][] = [
    [
      'a word that is gone',
      (files) => files.change('intake/words/es.yaml', '\nwear:\n', '\nworn:\n'),
      /wear/,
    ],
    [
      'a short word that is gone in every language',
      (files) => {
        for (const code of ['en', 'es']) {
          const text = files.read(`intake/words/${code}.yaml`)
          files.write(`intake/words/${code}.yaml`, text.replace(/(\nwear:\n) {2}short: .*\n/, '$1'))
        }
      },
      /wear\.short/,
    ],
    [
      'an edge to nowhere',
      (files) => files.change('intake/flow.yaml', 'to: quilt_count', 'to: quilt_cuont'),
      /quilt_cuont/,
    ],
    [
      'a rule that nobody knows',
      (files) => files.change('intake/flow.yaml', 'rule: has_a_size', 'rule: has_a_sighs'),
      /has_a_sighs/,
    ],
    [
      'constructor as a rule',
      (files) => files.change('intake/flow.yaml', 'rule: has_a_size', 'rule: constructor'),
      /constructor/,
    ],
    [
      'a reader that nobody is',
      (files) => files.change('intake/flow.yaml', 'read_by: [tally]', 'read_by: [tully]'),
      /tully/,
    ],
    [
      'a drawing that is not there',
      (files) => files.change('intake/flow.yaml', 'drawing: pull-test', 'drawing: push-test'),
      /push-test/,
    ],
    ['a layout without a price', (files) => addLayout(files), /big-squares/],
    [
      'two files of prices for one day',
      (files) => files.write('rates/again.yaml', files.read('rates/2026-01-01.yaml')),
      /rates.*2026-01-01|2026-01-01.*rates/,
    ],
    [
      'a flow that is no YAML',
      (files) => files.append('intake/flow.yaml', '\n  - ]['),
      /flow\.yaml/,
    ],
    [
      'a shop without an address to write to',
      (files) =>
        files.write(
          'shop.yaml',
          files.read('shop.yaml').replace(/\nemail: .*\n/, '\nemail: nobody\n'),
        ),
      /shop\.yaml.*email/,
    ],
    ['a missing file', (files) => rmSync(join(files.folder, 'shop.yaml')), /shop\.yaml/],
  ]

  test.each(changes)('%s', async (_, change, names) => {
    change(files)
    const env = { DATA_DIR: dataDir, FLOWS_DIR: files.folder }
    const { code, stdout, stderr } = await runHere(['serve'], env)
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' })
    const { error } = JSON.parse(stderr)
    expect(Object.keys(error)).toEqual(['code', 'message'])
    expect(error.code).toBe('flows_invalid')
    expect(error.message).toMatch(names)
  })
})

describe('a conversation that is open while the flow changes', () => {
  let files: Files
  let dataDir: string
  let server: RunningServer
  let pile: string
  const env = () => ({ FLOWS_DIR: files.folder, LOG_LEVEL: 'error' })

  beforeAll(async () => {
    files = new Files()
    dataDir = mkdtempSync(join(tmpdir(), 'pieceworth-data-'))
    server = await startServer({ dataDir, env: env() })
    const walker = await new Walker(server.url).start()
    await answerAll(walker, pileAnswers)
    await addGarment(walker, shirt, 'size')
    pile = walker.pilePath
    await server.stop()
    addQuestion(files)
  })
  afterAll(() => {
    files.remove()
    rmSync(dataDir, { recursive: true, force: true })
  })

  test('keeps the questions that it began with, while a new one gets the new question', async () => {
    server = await startServer({ dataDir, env: env() })
    try {
      const old = await new Walker(server.url).open(pile)
      expect(old.question?.id).toBe('size')
      await old.send(shirt.size!)
      expect(old.question?.id).toBe('label')
      const fresh = await new Walker(server.url).start()
      await answerAll(fresh, pileAnswers)
      await addGarment(fresh, shirt, 'lining')
      expect(fresh.question?.id).toBe('lining')
    } finally {
      await server.stop()
    }
  })

  const whyNot = async (): Promise<string> => {
    const { code, stderr } = await refusedStart(files, dataDir)
    expect(code).toBe(2)
    // The log says above it how the files were proven.
    const { error } = JSON.parse(stderr.trim().split('\n').at(-1)!)
    expect(error.code).toBe('flows_invalid')
    return error.message
  }

  test('holds the start up where a question goes together with its words', async () => {
    const plain = new Files()
    try {
      for (const file of [
        'intake/flow.yaml',
        'intake/limits.yaml',
        'intake/words/en.yaml',
        'intake/words/es.yaml',
      ]) {
        files.write(file, plain.read(file))
      }
    } finally {
      plain.remove()
    }
    // The fresh conversation of the test before still asks about the lining.
    expect(await whyNot()).toMatch(/open conversations still need the words lining\./)
  })

  test('holds the start up where it needs a rule that is gone', async () => {
    addQuestion(files)
    const store = await openStore({ dataDir })
    const versions = await store.db.selectFrom('flow_version').selectAll().execute()
    for (const { hash, body } of versions) {
      await store.db
        .updateTable('flow_version')
        .set({ body: body.replaceAll('stays_at_home', 'stayed_at_home') })
        .where('hash', '=', hash)
        .execute()
    }
    await store.close()
    expect(await whyNot()).toMatch(/open conversations still need the rule stayed_at_home/)
  })
})

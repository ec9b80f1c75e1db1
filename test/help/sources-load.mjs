import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'

export async function load(url, context, next) {
  if (!/\.tsx?$/.test(url)) return next(url, context)
  const { transform } = await import('esbuild')
  const source = await readFile(fileURLToPath(url), 'utf8')
  const { code } = await transform(source, {
    loader: url.endsWith('x') ? 'tsx' : 'ts',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    sourcefile: url,
    sourcemap: 'inline',
  })
  return { format: 'module', source: code, shortCircuit: true }
}

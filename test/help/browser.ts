import { existsSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import chromium from '@sparticuz/chromium'
import { type Browser, chromium as driver } from 'playwright-core'

/**
 * A browser for tests, from a package: nothing of the machine's is needed or used, and it never calls
 * home. Throws a plain sentence where it cannot start, so that a browser test fails and never passes by.
 */
export async function openBrowser(): Promise<Browser> {
  try {
    const home = await unpacked()
    return await driver.launch({
      executablePath: join(home, 'chromium'),
      args: [
        '--no-sandbox',
        '--headless',
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--no-first-run',
        '--font-render-hinting=none',
      ],
      env: {
        HOME: home,
        TMPDIR: tmpdir(),
        PATH: process.env.PATH ?? '',
        LD_LIBRARY_PATH: join(home, 'al2023', 'lib'),
        FONTCONFIG_PATH: join(home, 'fonts'),
      },
    })
  } catch (cause) {
    throw new Error(
      'The test browser could not start. It comes with the package @sparticuz/chromium (Linux, x64); run "npm ci" again, and see the cause below.',
      { cause },
    )
  }
}

/**
 * The browser, its libraries and fonts, unpacked once for this release. Two test files may come here
 * at once: each unpacks beside, and the first to finish is kept.
 */
async function unpacked(): Promise<string> {
  const home = join(tmpdir(), `test-browser-${release()}`)
  if (existsSync(home)) return home

  const beside = mkdtempSync(join(tmpdir(), 'test-browser-'))
  await unpackInto(beside)
  writeFileSync(join(beside, 'fonts', 'fonts.conf'), fontsOf(home))
  try {
    renameSync(beside, home)
  } catch (error) {
    rmSync(beside, { recursive: true })
    if (!existsSync(home)) throw error
  }
  return home
}

/** The package unpacks to the temporary folder, and its libraries only where it believes to be hosted. */
async function unpackInto(folder: string): Promise<void> {
  const { TMPDIR, AWS_EXECUTION_ENV } = process.env
  process.env.TMPDIR = folder
  process.env.AWS_EXECUTION_ENV = 'AWS_Lambda_nodejs20.x'
  try {
    await chromium.executablePath()
  } finally {
    restore('TMPDIR', TMPDIR)
    restore('AWS_EXECUTION_ENV', AWS_EXECUTION_ENV)
  }
}

// The package's own file looks for its fonts in the hosted places only.
const fontsOf = (home: string): string =>
  `<?xml version="1.0"?><fontconfig><dir>${home}/fonts</dir><cachedir>${home}/fonts-cache</cachedir></fontconfig>`

function restore(name: string, value: string | undefined): void {
  if (value === undefined) delete process.env[name]
  else process.env[name] = value
}

function release(): string {
  const entry = import.meta.resolve('@sparticuz/chromium')
  const manifest = new URL('../../package.json', entry)
  return (JSON.parse(readFileSync(manifest, 'utf8')) as { version: string }).version
}

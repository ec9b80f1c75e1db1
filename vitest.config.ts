import { readFileSync, statfsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { configDefaults, defineConfig } from 'vitest/config'

/** Long tests are for `npm run test:long`: journeys in the browser, mutations of the files, longer forms of others. */
const long = 'test/**/*.long.test.ts'

/**
 * Tests commit thousands of times to stores of their own, and a disk makes each wait. Where memory holds files, runs
 * programs from them and has the room, the temporary folder is there. What is killed in tests is a process, not the
 * machine: its files outlive it in either place.
 */
function temporaryFolder(): string {
  const memory = '/dev/shm'
  const room = 4 * 1024 ** 3
  try {
    const { bavail, bsize } = statfsSync(memory)
    const mounted = readFileSync('/proc/mounts', 'utf8').match(/^\S+ \/dev\/shm tmpfs (\S+)/m)?.[1]
    const runs = mounted !== undefined && !mounted.split(',').includes('noexec')
    return runs && bavail * bsize > room ? memory : tmpdir()
  } catch {
    return tmpdir()
  }
}

const globalSetup = ['test/help/postgres.ts']

export default defineConfig({
  test: {
    reporters: ['default', './test/help/closing-line.ts'],
    // So that processes which tests fork run the TypeScript sources too.
    execArgv: ['--import', './test/help/sources.mjs'],
    env: { TMPDIR: temporaryFolder() },
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // Modules are read once a worker and not once a file. None holds what a test could spoil for the next.
    isolate: false,
    projects: [
      {
        extends: true,
        test: {
          name: 'short',
          include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
          exclude: [...configDefaults.exclude, long],
          globalSetup,
        },
      },
      { extends: true, test: { name: 'long', include: [long], globalSetup } },
    ],
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
})

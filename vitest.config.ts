import { configDefaults, defineConfig } from 'vitest/config'

/** Long tests are for `npm run test:long`: journeys in the browser, mutations of the files, longer forms of others. */
const long = 'test/**/*.long.test.ts'

const globalSetup = ['test/help/postgres.ts']

export default defineConfig({
  test: {
    reporters: ['default', './test/help/closing-line.ts'],
    // So that processes which tests fork run the TypeScript sources too.
    execArgv: ['--import', './test/help/sources.mjs'],
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

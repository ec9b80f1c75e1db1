import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    reporters: ['default', './test/help/closing-line.ts'],
    globalSetup: ['test/help/postgres.ts'],
    // So that processes which tests fork run the TypeScript sources too.
    execArgv: ['--import', './test/help/sources.mjs'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
})

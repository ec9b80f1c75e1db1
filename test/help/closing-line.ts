import type { Reporter, TestModule } from 'vitest/node'

/** Ends the run with one plain line of counts, true to what ran. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[]): void {
    const counts = { passed: 0, failed: 0, skipped: 0 }
    for (const module of modules) {
      const tests = [...module.children.allTests()]
      for (const test of tests) {
        const { state } = test.result()
        if (state === 'passed' || state === 'failed') counts[state] += 1
        else counts.skipped += 1
      }
      // A file that fails before its tests are known has none to count.
      if (module.state() === 'failed' && !tests.some((test) => test.result().state === 'failed')) {
        counts.failed += 1
      }
    }
    counts.failed += unhandled.length
    const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : ''
    process.stdout.write(`\n${counts.passed} passed, ${counts.failed} failed${skipped}\n`)
  }
}

/** One JSON document on standard output, and nothing else. */
export const print = (value: unknown): void => {
  process.stdout.write(`${JSON.stringify(value)}\n`)
}

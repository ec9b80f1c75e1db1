import { expect, test } from 'vitest'
import { bearAll, makers } from '../prove/faults.ts'

/** Those that need nothing but a server; the others start a PostgreSQL or wait for a mail to be tried again. */
const short = ['disk', 'read-only', 'photos', 'ahead', 'behind', 'far-ahead']

test.each(short)(
  'nothing is lost or doubled, and all is refused clearly: %s',
  async (name) => {
    expect(Object.keys(makers)).toContain(name)
    const { borne, notHere, faults } = await bearAll(3_000, [name])
    // Some need root, a program or a file system that not every machine has.
    if (notHere.length > 0) process.stdout.write(`not brought about on this machine: ${name}\n`)
    expect(faults).toEqual([])
    expect(borne.length + notHere.length).toBe(1)
  },
  400_000,
)

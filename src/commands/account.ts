import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { systemClock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { readConfig } from '../config.ts'
import { addAccount } from '../desk/accounts.ts'
import { migrate } from '../store/migrate.ts'
import { openStore } from '../store/open.ts'
import { print } from './output.ts'

const usage =
  'account add --email … --name … [--role staff|owner] with the password on standard input'

/** `account add`: a person for the desk. The password comes on standard input, never in the arguments. */
export async function accountVerb([what, ...rest]: readonly string[]): Promise<number> {
  if (what !== 'add') throw new Failure('bad_input', { field: 'account', why: usage })
  const { values } = parseArgs({
    args: [...rest],
    options: {
      email: { type: 'string' },
      name: { type: 'string' },
      role: { type: 'string', default: 'staff' },
    },
  })
  if (!values.email || !values.name || (values.role !== 'staff' && values.role !== 'owner')) {
    throw new Failure('bad_input', { field: 'account', why: usage })
  }
  const password = readFileSync(0, 'utf8').replace(/\r?\n$/, '')
  const { databaseUrl, dataDir } = readConfig(process.env)
  const store = await openStore({ ...(databaseUrl && { databaseUrl }), dataDir })
  try {
    await migrate(store)
    await addAccount(store, systemClock, {
      email: values.email,
      name: values.name,
      role: values.role,
      password,
    })
  } finally {
    await store.close()
  }
  print({ ok: true, email: values.email, role: values.role })
  return 0
}

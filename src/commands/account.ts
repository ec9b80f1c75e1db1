import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { systemClock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { readConfig } from '../config.ts'
import { addAccount } from '../desk/accounts.ts'
import { migrate } from '../store/migrate.ts'
import { openStore } from '../store/open.ts'
import { type Role, roles } from '../store/schema.ts'
import { print } from './print.ts'

const usage =
  'account add --email … --name … [--role staff|owner|bench] with the password on standard input'

interface Asked {
  readonly email: string
  readonly name: string
  readonly role: Role
}

function readArguments([what, ...rest]: readonly string[]): Asked {
  const wrong = (cause?: unknown) =>
    new Failure('bad_input', { field: 'account', why: usage }, { cause })
  if (what !== 'add') throw wrong()
  const { email, name, role } = parsed(rest, wrong)
  const known = roles.find((one) => one === role)
  if (!email || !name || !known) throw wrong()
  return { email, name, role: known }
}

function parsed(args: readonly string[], wrong: (cause: unknown) => Failure) {
  const text = { type: 'string' } as const
  try {
    return parseArgs({
      args: [...args],
      options: { email: text, name: text, role: { ...text, default: 'staff' } },
    }).values
  } catch (cause) {
    throw wrong(cause)
  }
}

/** `account add`: a person for the desk. The password comes on standard input, never in the arguments. */
export async function accountVerb(given: readonly string[]): Promise<number> {
  const asked = readArguments(given)
  const password = readFileSync(0, 'utf8').replace(/\r?\n$/, '')
  const { databaseUrl, dataDir } = readConfig(process.env)
  const store = await openStore({ ...(databaseUrl && { databaseUrl }), dataDir })
  try {
    await migrate(store)
    await addAccount(store, systemClock, { ...asked, password })
  } finally {
    await store.close()
  }
  print({ ok: true, email: asked.email, role: asked.role })
  return 0
}

import type { Clock } from '../../src/base/clock.ts'
import { newId } from '../../src/base/ids.ts'
import { insertAccount } from '../../src/desk/accounts.ts'
import { openSession } from '../../src/desk/sessions.ts'
import type { Store } from '../../src/store/open.ts'
import type { Role } from '../../src/store/schema.ts'
import { sessionCookie } from '../../src/web/desk/cookies.ts'
import { Visitor } from './desk-visitor.ts'
import type { App } from './workshop.ts'

interface Person {
  readonly name: string
  readonly role?: Role
}

/** Somebody new with an account who is signed in already: hashing a password takes longer than most tests. */
export async function signedIn(
  store: Store,
  clock: Clock,
  app: App,
  { name, role = 'staff' }: Person,
): Promise<Visitor> {
  const id = newId()
  await insertAccount(store.db, {
    id,
    email: `${name.toLowerCase()}@lantern-street.example`,
    name,
    role,
    password_hash: 'none',
    made_at: clock(),
    disabled_at: null,
    seen_at: null,
  })
  const { token } = await openSession(store.db, clock, id)
  const visitor = new Visitor(app)
  visitor.cookies.set(sessionCookie, token)
  return visitor
}

import { parse } from 'node-html-parser'
import type { Clock } from '../../src/base/clock.ts'
import type { Store } from '../../src/store/open.ts'
import { type Answer, Visitor } from './desk-visitor.ts'
import { signedIn } from './signed-in.ts'
import type { App, Workshop } from './workshop.ts'

/** Somebody of the workshop, signed in. */
export async function staffMember(
  store: Store,
  clock: Clock,
  app: App,
  name: string,
): Promise<Visitor> {
  return signedIn(store, clock, app, { name })
}

/** Hidden fields and typed ones of the form that posts to `action`, as a browser would send them. */
export function formOf(body: string, action: string): Record<string, string> {
  const form = parse(body)
    .querySelectorAll('form')
    .find((one) => one.getAttribute('action') === action)
  if (!form) throw new Error(`no form posts to ${action}`)
  const fields: Record<string, string> = {}
  for (const input of form.querySelectorAll('input, textarea')) {
    const name = input.getAttribute('name')
    if (!name || name in fields || input.getAttribute('type') === 'checkbox') continue
    fields[name] = input.tagName === 'TEXTAREA' ? input.text : (input.getAttribute('value') ?? '')
  }
  return fields
}

/** Accepts the whole pile at the desk. */
export async function takePile(desk: Visitor, pile: number, reason = 'all well'): Promise<void> {
  await desk.get(`/desk/piles/${pile}`)
  const path = `/desk/piles/${pile}/decision`
  await desk.post(path, { verdict: 'accept', reason, seen: desk.field('seen') })
}

/** Shows an offer whole and sends it as it is shown. */
export async function sendOffer(
  desk: Visitor,
  pile: number,
  typed: Readonly<Record<string, string>> = {},
): Promise<Answer> {
  const path = `/desk/piles/${pile}/offer`
  const { body } = await desk.get(path)
  const shown = await desk.post(path, { ...formOf(body, path), ...typed, act: 'preview' })
  if (shown.status !== 200) return shown
  return desk.post(path, { ...formOf(shown.body, path), act: 'send' })
}

/** The customer's yes, by the form of the offer's page. */
export async function sayYes(
  { app }: Pick<Workshop, 'app'>,
  key: string,
  version: number,
  typed: Readonly<Record<string, string>> = {},
): Promise<Answer> {
  const customer = new Visitor(app)
  const page = await customer.get(`/i/${key}/offer/${version}`)
  const path = `/i/${key}/offer/${version}/accept`
  const fields = { name: 'Ana Ruiz', agree: 'yes', ...typed }
  return customer.postRaw(path, { hash: formOf(page.body, path).hash ?? '', ...fields })
}

import { type Change, tryText } from '../../desk/tries.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import type { Link } from './view.ts'

interface Named {
  readonly n: number
  readonly name: string
}

const linkTo = (number: number, label: string, change: Change): Link => ({
  label,
  href: deskPaths.whatIf(number, [tryText([change])]),
})

/** What if a garment of a pile were left out. */
export const withoutIt = (number: number, { n, name }: Named, { say }: Language): Link =>
  linkTo(number, say('desk.what_if.without_it', { name }), { change: 'without', garment: n })

/** What if a garment that waits, stays at home or was declined were taken. */
export const takingIt = (number: number, { n, name }: Named, { say }: Language): Link =>
  linkTo(number, say('desk.what_if.take_it', { name }), { change: 'take', garment: n })

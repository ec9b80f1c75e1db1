import type { Role } from '../../store/schema.ts'
import { owner, staff, type Who, workshop } from '../who.ts'
import { custodyPaths } from './custody-paths.ts'
import { deskPaths } from './paths.ts'

interface Place {
  /** Its name stands under `desk.places`. */
  readonly name: string
  readonly href: string
  readonly who: readonly Who[]
  /** It stands behind "More": not everybody goes there many times a day. */
  readonly behind?: true
}

/** Where one goes from anywhere at the desk, in this order, as far as it is one's own. */
const places: readonly Place[] = [
  { name: 'queue', href: deskPaths.queue, who: staff },
  { name: 'messages', href: deskPaths.written, who: staff },
  { name: 'bench', href: deskPaths.bench, who: workshop },
  { name: 'custody', href: custodyPaths.home, who: workshop },
  { name: 'count', href: custodyPaths.count, who: workshop, behind: true },
  { name: 'calendar', href: deskPaths.calendar, who: staff, behind: true },
  { name: 'mails', href: deskPaths.mails(), who: staff, behind: true },
  { name: 'people', href: deskPaths.people, who: owner, behind: true },
  { name: 'files', href: deskPaths.files, who: owner, behind: true },
  { name: 'shop', href: deskPaths.shop, who: owner, behind: true },
  { name: 'embed', href: deskPaths.embed, who: owner, behind: true },
  { name: 'numbers', href: deskPaths.numbers, who: owner, behind: true },
]

export const placesFor = (role: Role): readonly Place[] =>
  places.filter(({ who }) => who.includes(role))

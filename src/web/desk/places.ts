import type { Role } from '../../store/schema.ts'
import { owner, staff, type Who, workshop } from '../who.ts'
import { custodyPaths } from './custody-paths.ts'
import { deskPaths } from './paths.ts'

interface Place {
  /** Its name stands under `desk.places`. */
  readonly name: string
  readonly href: string
  readonly who: readonly Who[]
}

/** Where one goes from anywhere at the desk, in this order, as far as it is one's own. */
const places: readonly Place[] = [
  { name: 'queue', href: deskPaths.queue, who: staff },
  { name: 'messages', href: deskPaths.written, who: staff },
  { name: 'mails', href: deskPaths.mails(), who: staff },
  { name: 'bench', href: deskPaths.bench, who: workshop },
  { name: 'custody', href: custodyPaths.home, who: workshop },
  { name: 'people', href: deskPaths.people, who: owner },
  { name: 'files', href: deskPaths.files, who: owner },
  { name: 'numbers', href: deskPaths.numbers, who: owner },
]

export const placesFor = (role: Role): readonly Place[] =>
  places.filter(({ who }) => who.includes(role))

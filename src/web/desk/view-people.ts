import type { Role } from '../../store/schema.ts'
import type { Choice } from './view-what-if.ts'

/** A link that was just made: shown on this one page and never again. */
export interface HandedLink {
  readonly sentence: string
  readonly label: string
  readonly url: string
}

export interface PersonShown {
  readonly id: string
  readonly name: string
  readonly email: string
  readonly role: string
  /** What stands beside the name: "you", "closed since 12 Mar". */
  readonly marks: readonly string[]
  readonly lines: readonly string[]
  readonly closed: boolean
  readonly change: string
  /** What a form of this person brings of what the page showed. */
  readonly seen: { readonly csrf: string; readonly was: Role; readonly closed: '0' | '1' }
  readonly rolePicked: Role
  readonly roleAt: string
  readonly linkAt: string
  readonly closeAt: string
  readonly reopenAt: string
}

export interface PeoplePage {
  readonly page: 'people'
  readonly title: string
  readonly people: readonly PersonShown[]
  readonly roles: readonly Choice[]
  /** A refusal of a form on this page. */
  readonly error: string | null
  readonly handed: HandedLink | null
  readonly form: {
    readonly postTo: string
    readonly csrf: string
    readonly name: string
    readonly email: string
    readonly role: Role
  }
}

import type { Person } from '../../desk/people.ts'
import { type Role, roles } from '../../store/schema.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import type { HandedLink, PeoplePage, PersonShown } from './view-people.ts'
import { dayWords, momentWords } from './when.ts'

export interface PeopleShown {
  readonly language: Language
  readonly csrf: string
  /** The id of who looks. */
  readonly reader: string
  readonly error: string | null
  readonly handed: HandedLink | null
  /** What was typed into the form for a new person. */
  readonly typed: { readonly name: string; readonly email: string; readonly role: Role }
}

function seenWords(person: Person, { say, locale }: Language): string {
  if (person.invited) return say('desk.people.invited')
  if (person.seenAt === null) return say('desk.people.never')
  return say('desk.people.seen', { at: momentWords(person.seenAt, locale) })
}

function shown(person: Person, { language, csrf, reader }: PeopleShown): PersonShown {
  const { say, locale } = language
  const { id, name, email, role, madeAt, closedAt } = person
  return {
    id,
    name,
    email,
    role: say(`desk.people.roles.${role}`),
    marks: [
      ...(id === reader ? [say('desk.people.you')] : []),
      ...(closedAt === null
        ? []
        : [say('desk.people.closed', { at: momentWords(closedAt, locale) })]),
    ],
    lines: [say('desk.people.made', { at: dayWords(madeAt, locale) }), seenWords(person, language)],
    closed: closedAt !== null,
    change: say('desk.people.change', { name }),
    seen: { csrf, was: role, closed: closedAt === null ? '0' : '1' },
    rolePicked: role,
    roleAt: deskPaths.person(id, 'role'),
    linkAt: deskPaths.person(id, 'link'),
    closeAt: deskPaths.person(id, 'close'),
    reopenAt: deskPaths.person(id, 'reopen'),
  }
}

export function handedLink(
  { name, url, until }: { name: string; url: string; until: number },
  { say, locale }: Language,
): HandedLink {
  return {
    sentence: say('desk.people.handed', { name, until: dayWords(until, locale) }),
    label: say('desk.people.handed_label', { name }),
    url,
  }
}

export function peoplePage(people: readonly Person[], desk: PeopleShown): PeoplePage {
  const { say } = desk.language
  return {
    page: 'people',
    title: say('desk.people.title'),
    people: people.map((person) => shown(person, desk)),
    roles: roles.map((role) => ({
      value: role,
      label: `${say(`desk.people.roles.${role}`)}: ${say(`desk.people.may.${role}`)}`,
    })),
    error: desk.error,
    handed: desk.handed,
    form: { postTo: deskPaths.people, csrf: desk.csrf, ...desk.typed },
  }
}

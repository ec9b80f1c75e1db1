import type { DeskMail, Mails } from '../../desk/mail/mails.ts'
import { mailTemplates } from '../../desk/mail/templates.ts'
import { type MailState, mailStates } from '../../store/schema-mail.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import type { MailLine, MailsPage } from './view-messages.ts'
import { momentWords } from './when.ts'

function factsOf(mail: DeskMail, { say, locale }: Language): string[] {
  const when = (at: number) => momentWords(at, locale)
  const { state, tries, trouble, doneAt, dueAt, queuedAt } = mail
  return [
    say('desk.mails.queued', { at: when(queuedAt) }),
    ...(tries > 0 ? [say('desk.mails.tries', { count: tries })] : []),
    ...(state === 'waiting' ? [say('desk.mails.next', { at: when(dueAt) })] : []),
    ...(doneAt === null ? [] : [say(`desk.mails.done_${state}`, { at: when(doneAt) })]),
    ...(trouble === null ? [] : [say('desk.mails.trouble', { code: trouble })]),
    ...(mailTemplates[mail.template]?.reminder ? [say('desk.mails.reminder')] : []),
  ]
}

function lineOf(mail: DeskMail, language: Language): MailLine {
  const { say } = language
  const { state, to, body } = mail
  const way = state === 'sent' && mail.way === 'folder' ? 'written' : state
  return {
    id: mail.id,
    state,
    stateWords: say(`desk.mails.states.${way}`),
    subject: mail.subject,
    to: say('desk.mails.to', { name: to.name, address: to.address }),
    pile: { label: say('desk.pile', { number: mail.pile }), href: deskPaths.messages(mail.pile) },
    facts: factsOf(mail, language),
    body: {
      before: body.lead,
      quote: body.quote,
      more: body.more ?? [],
      after: [say('desk.mails.link', { label: body.link }), ...body.after],
    },
    againAt: state === 'failed' ? deskPaths.mailAgain(mail.id) : null,
    revokeAt: mail.linkLives ? deskPaths.mailRevoke(mail.id) : null,
  }
}

export function mailsPage(
  { mails, page, pages, counts }: Mails,
  state: MailState | null,
  { csrf, language }: { csrf: string; language: Language },
): MailsPage {
  const { say } = language
  return {
    page: 'mails',
    title: say('desk.mails.title'),
    csrf,
    filters: [
      { label: say('desk.mails.all'), href: deskPaths.mails(), current: state === null },
      ...mailStates.map((one) => ({
        label: say('desk.mails.filter', {
          state: say(`desk.mails.states.${one}`),
          count: counts[one],
        }),
        href: deskPaths.mails(one),
        current: one === state,
      })),
    ],
    mails: mails.map((mail) => lineOf(mail, language)),
    pager:
      pages === 1
        ? null
        : {
            at: say('desk.queue.page', { page, pages }),
            before: page > 1 ? deskPaths.mails(state, page - 1) : null,
            after: page < pages ? deskPaths.mails(state, page + 1) : null,
          },
  }
}

import { Hidden, useSay } from '../chat/pieces.tsx'
import { PagerNav } from './queue.tsx'
import type { MailLine, MailsPage } from './view-messages.ts'

/** The outbox: what was sent to customers, what waits, what was given up. */
export function MailsView({ page }: { page: MailsPage }) {
  const say = useSay()
  return (
    <main id="main" class="list" tabIndex={-1}>
      <h1>{page.title}</h1>
      <nav class="mail-filters" aria-label={say('desk.mails.filters')}>
        {page.filters.map(({ label, href, current }) => (
          <a key={href} href={href} aria-current={current ? 'page' : undefined}>
            {label}
          </a>
        ))}
      </nav>
      {page.mails.length === 0 ? (
        <p class="card empty">{say('desk.mails.none')}</p>
      ) : (
        <ol class="mails">
          {page.mails.map((mail) => (
            <Mail key={mail.id} mail={mail} csrf={page.csrf} />
          ))}
        </ol>
      )}
      <PagerNav pager={page.pager} />
    </main>
  )
}

function Mail({ mail, csrf }: { mail: MailLine; csrf: string }) {
  const say = useSay()
  const { subject, to, stateWords, pile, facts, body } = mail
  return (
    <li class={`card mail mail-${mail.state}`}>
      <h2>{subject}</h2>
      <p>
        <span class="mail-state">{stateWords}</span> <span>{to}</span>{' '}
        <a href={pile.href}>{pile.label}</a>
      </p>
      <p class="by">{facts.join(' · ')}</p>
      <details>
        <summary>
          {say('desk.mails.text')}
          <span class="unseen"> {subject}</span>
        </summary>
        <Lines lines={body.before} />
        {body.quote !== null && (
          <blockquote class="typed" dir="auto">
            {body.quote}
          </blockquote>
        )}
        {body.more.map(({ lead, quote }) => (
          <div key={`${lead} ${quote}`}>
            <Lines lines={[lead]} />
            <blockquote class="typed" dir="auto">
              {quote}
            </blockquote>
          </div>
        ))}
        <Lines lines={body.after} />
      </details>
      {(mail.againAt ?? mail.revokeAt) && (
        <div class="mail-acts">
          {mail.againAt && <Act at={mail.againAt} name="again" about={subject} csrf={csrf} />}
          {mail.revokeAt && <Act at={mail.revokeAt} name="revoke" about={subject} csrf={csrf} />}
        </div>
      )}
    </li>
  )
}

const Lines = ({ lines }: { lines: readonly string[] }) => (
  <>
    {lines.map((line) => (
      <p key={line} class="typed">
        {line}
      </p>
    ))}
  </>
)

function Act({ at, name, about, csrf }: { at: string; name: string; about: string; csrf: string }) {
  const say = useSay()
  return (
    <form method="post" action={at}>
      <Hidden fields={{ csrf }} />
      <button type="submit" class={name === 'again' ? 'button main' : 'button second'}>
        {say(`desk.mails.${name}`)}
        <span class="unseen"> {about}</span>
      </button>
    </form>
  )
}

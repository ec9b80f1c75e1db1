import { TalkPhotos } from '../chat/messages.tsx'
import { Hidden, useSay, WordsField } from '../chat/pieces.tsx'
import type {
  DeskEntry,
  DeskThread,
  PileMessagesPage,
  StaffWriteForm,
  WrittenPage,
} from './view-messages.ts'

/** What was written about one garment or the pile, and a way to write. */
export function ThreadShown({ thread, csrf }: { thread: DeskThread; csrf: string }) {
  const say = useSay()
  return (
    <div class="talk" id={thread.id}>
      <Entries entries={thread.entries} csrf={csrf} />
      <details class="talk-write" open={thread.waits || thread.form.error !== null}>
        <summary>{say('desk.messages.write')}</summary>
        <Write form={thread.form} about={thread.title} />
      </details>
    </div>
  )
}

function Entries({ entries, csrf }: { entries: readonly DeskEntry[]; csrf: string }) {
  if (entries.length === 0) return null
  return (
    <ul class="notes">
      {entries.map((entry) => (
        <Entry key={entry.id} entry={entry} csrf={csrf} />
      ))}
    </ul>
  )
}

function Entry({ entry, csrf }: { entry: DeskEntry; csrf: string }) {
  const say = useSay()
  const { id, by, at, about, text, photos, state, waits, settleAt } = entry
  return (
    <li id={id} class={waits ? 'note' : 'note note-settled'}>
      <p class="note-about">
        <strong>{about ?? by}</strong> <span class="by">{at}</span>
      </p>
      {text && (
        <p class="typed" dir="auto">
          {text}
        </p>
      )}
      <TalkPhotos photos={photos} />
      {state && <p class={waits ? 'talk-state talk-waits' : 'by'}>{state}</p>}
      {settleAt && (
        <form method="post" action={settleAt}>
          <Hidden fields={{ csrf }} />
          <button type="submit" class="button second">
            {say('desk.notes.settle')}
            <span class="unseen"> {about ?? text.slice(0, 60)}</span>
          </button>
        </form>
      )}
    </li>
  )
}

function Write({
  form,
  about,
  choices,
}: {
  form: StaffWriteForm
  about?: string
  choices?: PileMessagesPage['about']
}) {
  const say = useSay()
  const { id, error } = form
  return (
    <form method="post" action={form.postTo} noValidate>
      <Hidden fields={form.hidden} />
      {choices && (
        <div class="field">
          <label class="legend" for={`about-${id}`}>
            {say('desk.messages.about')}
          </label>
          <select id={`about-${id}`} name="item">
            {choices.map(({ value, label, chosen }) => (
              <option key={value} value={value} selected={chosen}>
                {label}
              </option>
            ))}
          </select>
        </div>
      )}
      <WordsField
        id={`field-${id}`}
        name="text"
        label={say('desk.messages.text')}
        about={about}
        value={form.text}
        rows={3}
        hint={form.hint}
        refused={error}
      />
      <div class="option">
        <input type="checkbox" id={`asks-${id}`} name="asks" value="1" checked={form.wantsAnswer} />
        <label for={`asks-${id}`}>{say('desk.messages.asks')}</label>
      </div>
      <button type="submit" class="button main">
        {say('desk.messages.send')}
        {about && <span class="unseen"> {about}</span>}
      </button>
    </form>
  )
}

/** What was written of one pile, open intakes too. */
export function PileMessagesView({ page }: { page: PileMessagesPage }) {
  const say = useSay()
  return (
    <main id="main" class="list" tabIndex={-1}>
      <h1>{page.title}</h1>
      {page.back && (
        <p class="onward">
          <a href={page.back.href}>{page.back.label}</a>
        </p>
      )}
      {page.threads.length === 0 && <p class="card empty">{say('desk.messages.none')}</p>}
      {page.threads.map((thread) => (
        <section key={thread.id} class="card garment" aria-labelledby={`${thread.id}-title`}>
          <h2 id={`${thread.id}-title`}>{thread.title}</h2>
          <ThreadShown thread={thread} csrf={page.csrf} />
        </section>
      ))}
      <section class="card garment talk" aria-labelledby="write-title">
        <h2 id="write-title">{say('desk.messages.new')}</h2>
        <Write form={page.form} choices={page.about} />
      </section>
    </main>
  )
}

/** Customers' messages of all piles that wait for the shop. */
export function WrittenView({ page }: { page: WrittenPage }) {
  const say = useSay()
  return (
    <main id="main" class="list" tabIndex={-1}>
      <h1>{page.title}</h1>
      {page.entries.length === 0 ? (
        <p class="card empty">{say('desk.messages.none_wait')}</p>
      ) : (
        <ol class="written">
          {page.entries.map(({ href, title, text, at }) => (
            <li key={`${href} ${at} ${text}`} class="card talk">
              <h2>
                <a href={href}>{title}</a>
              </h2>
              <p class="by">{at}</p>
              <p class="typed" dir="auto">
                {text}
              </p>
            </li>
          ))}
        </ol>
      )}
    </main>
  )
}

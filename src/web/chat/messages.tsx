import { photoFiles } from '../limits.ts'
import { Hidden, useSay, WordsField } from './pieces.tsx'
import type { Photo } from './view.ts'
import type { MessagesPage, RemindersPage, Talk, TalkThread, WriteForm } from './view-messages.ts'

/** What was written, as it stands on top of a page; nothing where nothing was, but for a way to write. */
export function TalkSection({ talk }: { talk: Talk | null | undefined }) {
  const say = useSay()
  if (!talk) return null
  const asking = talk.threads.filter(({ asks }) => asks)
  const others = talk.threads.filter(({ asks }) => !asks)
  return (
    <section class="card talk" id="messages" aria-labelledby="messages-title">
      <h2 id="messages-title">{say('messages.title')}</h2>
      {asking.map((thread) => (
        <Thread key={thread.id} thread={thread} heading="h3" />
      ))}
      {others.map((thread) => (
        <FoldedThread key={thread.id} thread={thread} />
      ))}
      <details class="talk-write" open={talk.write.error !== null}>
        <summary>{say('messages.write')}</summary>
        <Write form={talk.write} />
      </details>
    </section>
  )
}

/** A page of what was written alone. */
export function MessagesView({ page }: { page: MessagesPage }) {
  const say = useSay()
  const { threads, write } = page.talk
  return (
    <main id="main" class="sheet" tabIndex={-1}>
      <section class="card talk" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say('messages.title')}
        </h1>
        {threads.length === 0 && <p>{say('messages.none')}</p>}
        {threads.map((thread) => (
          <Thread key={thread.id} thread={thread} heading="h2" />
        ))}
      </section>
      <section class="card talk" aria-labelledby="write-title">
        <h2 id="write-title">{say('messages.own')}</h2>
        <Write form={write} />
      </section>
      <p class="asides">
        <a class="aside-link" href={page.backHref}>
          {say('messages.back')}
        </a>
      </p>
    </main>
  )
}

const Thread = ({ thread, heading: Heading }: { thread: TalkThread; heading: 'h2' | 'h3' }) => (
  <article class={thread.asks ? 'talk-thread talk-asks' : 'talk-thread'} id={thread.id}>
    <Heading>{thread.title}</Heading>
    <Body thread={thread} />
  </article>
)

const FoldedThread = ({ thread }: { thread: TalkThread }) => (
  <details class="talk-thread" id={thread.id} open={thread.answer.error !== null}>
    <summary>{thread.title}</summary>
    <Body thread={thread} />
  </details>
)

const Body = ({ thread }: { thread: TalkThread }) => (
  <>
    <ol class="talk-said">
      {thread.said.map(({ id, by, at, text, photos, mine }) => (
        <li key={id} class={mine ? 'talk-mine' : undefined}>
          <p class="talk-by">
            <strong>{by}</strong> <span>{at}</span>
          </p>
          {text && (
            <p class="typed" dir="auto">
              {text}
            </p>
          )}
          <TalkPhotos photos={photos} />
        </li>
      ))}
    </ol>
    {thread.asks ? (
      <Write form={thread.answer} about={thread.title} />
    ) : (
      <details class="talk-write" open={thread.answer.error !== null}>
        <summary>
          {thread.answer.label}
          <span class="unseen"> {thread.title}</span>
        </summary>
        <Write form={thread.answer} about={thread.title} />
      </details>
    )}
  </>
)

/** Photos that came with a message, each a link to the larger one. */
export const TalkPhotos = ({ photos }: { photos: readonly Photo[] }) =>
  photos.length > 0 ? (
    <p class="talk-photos">
      {photos.map(({ id, view, thumb, alt }) => (
        <a key={id} href={view}>
          <img src={thumb} alt={alt} width={96} height={96} />
        </a>
      ))}
    </p>
  ) : null

/** `about` is told with the button, for who hears it alone. */
function Write({ form, about }: { form: WriteForm; about?: string }) {
  const say = useSay()
  const { id, error, longest, mostPhotos } = form
  return (
    <form
      method="post"
      action={form.postTo}
      noValidate
      {...(mostPhotos > 0 && { encType: 'multipart/form-data' })}
    >
      <Hidden fields={form.hidden} />
      <WordsField
        id={`field-${id}`}
        name="text"
        label={form.label}
        about={about}
        value={form.text}
        rows={3}
        hint={say('messages.longest', { longest })}
        refused={error}
      />
      {mostPhotos > 0 && (
        <div class="field">
          <label class="legend" for={`photo-${id}`}>
            {say('messages.photos')}
            {about && <span class="unseen"> {about}</span>}
          </label>
          <input
            type="file"
            id={`photo-${id}`}
            name="photo"
            multiple
            accept={photoFiles}
            aria-describedby={`photo-${id}-hint`}
          />
          <p class="hint" id={`photo-${id}-hint`}>
            {say('messages.photos_hint', { most: mostPhotos })}
          </p>
        </div>
      )}
      <button type="submit" class="button main">
        {say('messages.send')}
        {about && <span class="unseen"> {about}</span>}
      </button>
    </form>
  )
}

/** Stops reminders with one button. */
export function RemindersView({ page }: { page: RemindersPage }) {
  const say = useSay()
  const wanted = page.stopped ? 'again' : 'stop'
  return (
    <main id="main" class="sheet" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say(page.stopped ? 'reminders.stopped' : 'reminders.title')}
        </h1>
        <p class="help">{say(page.stopped ? 'reminders.stopped_help' : 'reminders.help')}</p>
        <form method="post" action={page.postTo}>
          <button
            type="submit"
            name="reminders"
            value={wanted}
            class={page.stopped ? 'button second' : 'button main'}
          >
            {say(`reminders.${wanted}`)}
          </button>
        </form>
      </section>
    </main>
  )
}

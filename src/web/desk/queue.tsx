import { Hidden, Picture, useSay } from '../chat/pieces.tsx'
import { deskPaths } from './paths.ts'
import type { Pager, QueueChoice, QueueEntry, QueuePage, QueueSearch } from './view-queue.ts'

/** What waits for the workshop, the doubtful first. */
export function QueueView({ page }: { page: QueuePage }) {
  const say = useSay()
  return (
    <main id="main" class="list" tabIndex={-1}>
      <h1>{page.title}</h1>
      <Search search={page.search} />
      {page.entries.length === 0 ? (
        <p class="card empty">{page.empty}</p>
      ) : (
        <Entries entries={page.entries} />
      )}
      <PagerNav pager={page.pager} />
      <p class="hint">{page.openIntakes}</p>
      <p class="hint keys">{say('desk.queue.keys')}</p>
      <AskedMeanwhile asked={page.asked} />
      <LeftPiles left={page.left} />
    </main>
  )
}

function Search({ search }: { search: QueueSearch }) {
  const say = useSay()
  return (
    <search>
      <form class="queue-search" action={deskPaths.queue}>
        <Hidden fields={{ list: search.list }} />
        <label class="search-text">
          <span>{say('desk.queue.text')}</span>
          <input type="search" name="text" value={search.text} maxLength={200} />
        </label>
        <Choices name="only" label={say('desk.queue.only.name')} choices={search.only} />
        <Choices name="order" label={say('desk.queue.order.name')} choices={search.order} />
        <button type="submit" class="button second">
          {say('desk.queue.search')}
        </button>
      </form>
      {search.found && (
        <p class="found">
          {search.found} {search.whole && <a href={search.whole.href}>{search.whole.label}</a>}
        </p>
      )}
    </search>
  )
}

function Choices({
  name,
  label,
  choices,
}: {
  name: string
  label: string
  choices: readonly QueueChoice[]
}) {
  return (
    <label>
      <span>{label}</span>
      <select name={name}>
        {choices.map(({ value, label: words, chosen }) => (
          <option key={value} value={value} selected={chosen}>
            {words}
          </option>
        ))}
      </select>
    </label>
  )
}

function AskedMeanwhile({ asked }: Pick<QueuePage, 'asked'>) {
  const say = useSay()
  if (asked.length === 0) return null
  return (
    <section class="card" aria-labelledby="asked-title">
      <h2 id="asked-title">{say('desk.queue.asked')}</h2>
      <p class="hint">{say('desk.queue.asked_help')}</p>
      <ul class="asked">
        {asked.map(({ about, href, text, day }) => (
          <li key={`${about} ${text} ${day}`}>
            <strong>
              <a href={href}>{about}</a>
            </strong>
            <p>{text}</p>
            <p class="hint">{day}</p>
          </li>
        ))}
      </ul>
    </section>
  )
}

function LeftPiles({ left }: Pick<QueuePage, 'left'>) {
  const say = useSay()
  if (left.length === 0) return null
  return (
    <section class="card" aria-labelledby="left-title">
      <h2 id="left-title">{say('desk.queue.left')}</h2>
      <ul class="paper-links">
        {left.map(({ label, href }) => (
          <li key={href}>
            <a href={href}>{label}</a>
          </li>
        ))}
      </ul>
    </section>
  )
}

export function Entries({ entries }: { entries: readonly QueueEntry[] }) {
  return (
    <ol class="queue" data-arrows="">
      {entries.map((entry) => (
        <Entry key={entry.href} entry={entry} />
      ))}
    </ol>
  )
}

function Entry({ entry }: { entry: QueueEntry }) {
  const { href, title, quilt, who, facts, marks, current } = entry
  return (
    <li class="entry">
      <a href={href} aria-current={current ? 'page' : undefined}>
        <span class="entry-title">{title}</span>
        {who && <span class="entry-who">{who}</span>}
        <span class="entry-line">{quilt}</span>
        <span class="entry-line">{facts}</span>
        {marks.length > 0 && (
          <span class="marks">
            {marks.map(({ kind, text }) => (
              <span key={kind} class={`mark mark-${kind}`}>
                {kind === 'eyes' && <Picture name="grade-eyes" />}
                {text}
              </span>
            ))}
          </span>
        )}
      </a>
    </li>
  )
}

export function PagerNav({ pager }: { pager: Pager | null }) {
  const say = useSay()
  if (!pager) return null
  return (
    <nav class="pager" aria-label={say('desk.queue.pages')}>
      {pager.before && (
        <a class="button second" rel="prev" href={pager.before}>
          {say('desk.queue.before')}
        </a>
      )}
      <span>{pager.at}</span>
      {pager.after && (
        <a class="button second" rel="next" href={pager.after}>
          {say('desk.queue.after')}
        </a>
      )}
    </nav>
  )
}

import { useSay } from '../chat/pieces.tsx'
import type { FilePage, FileShown, FilesPage } from './view-files.ts'

/** The owner's files that apply, and the drafts of others. */
export function FilesView({ page }: { page: FilesPage }) {
  const say = useSay()
  return (
    <main id="main" class="list owner" tabIndex={-1}>
      <h1>{page.title}</h1>
      {page.proof.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {page.waiting && <p class="notice">{page.waiting}</p>}
      <section class="card" aria-labelledby="drafts-title">
        <h2 id="drafts-title">{say('desk.drafts.title')}</h2>
        <p class="help">{say('desk.drafts.lead')}</p>
        {page.drafts.length === 0 && <p class="hint">{say('desk.drafts.empty')}</p>}
        <ul class="owner-list">
          {page.drafts.map(({ href, label, line }) => (
            <li key={href}>
              <a href={href}>{label}</a>
              <span class="hint">{line}</span>
            </li>
          ))}
        </ul>
        <a class="button second" href={page.tryNew.href}>
          {page.tryNew.label}
        </a>
      </section>
      {page.groups.map(({ title, lines, files }) => (
        <section key={title} class="card" aria-label={title}>
          <h2>{title}</h2>
          {lines.map((line) => (
            <p key={line} class="hint">
              {line}
            </p>
          ))}
          <ul class="owner-list">
            {files.map((file) => (
              <FileLine key={file.name} file={file} />
            ))}
          </ul>
        </section>
      ))}
    </main>
  )
}

function FileLine({ file }: { file: FileShown }) {
  const say = useSay()
  return (
    <li>
      <a href={file.href}>{file.name}</a>
      <span class="hint">{file.line}</span>
      {file.mark && <strong class="owner-mark">{file.mark}</strong>}
      <a class="owner-try" href={file.tryAt}>
        {say('desk.files.try')}
        <span class="unseen"> {file.name}</span>
      </a>
    </li>
  )
}

/** One file's text, to read. */
export function FileView({ page }: { page: FilePage }) {
  return (
    <main id="main" class="list owner" tabIndex={-1}>
      <p>
        <a class="owner-try" href={page.back.href}>
          {page.back.label}
        </a>
      </p>
      <h1>{page.title}</h1>
      <p class="hint">{page.line}</p>
      <p>
        <a class="button second" href={page.tryIt.href}>
          {page.tryIt.label}
        </a>
      </p>
      <textarea class="owner-text" rows={30} readOnly spellcheck={false} aria-label={page.title}>
        {page.text}
      </textarea>
    </main>
  )
}

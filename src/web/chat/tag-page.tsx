import { useSay } from './pieces.tsx'
import type { TagPage } from './view.ts'

/** Whose tag it is, and how to reach them. */
export function TagView({ page }: { page: TagPage }) {
  const say = useSay()
  const { shop, email, phone, address } = page
  return (
    <main id="main" class="sheet" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say('custody.tag.title', { shop })}
        </h1>
        <p class="help">{say('custody.tag.lead')}</p>
        <h2>{say('custody.tag.reach')}</h2>
        <p>
          <a class="button second" href={`mailto:${email}`}>
            {email}
          </a>
        </p>
        <p>{phone}</p>
        <address>
          {address.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </address>
      </section>
    </main>
  )
}

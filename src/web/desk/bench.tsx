import { GradeMark } from '../chat/pieces.tsx'
import { PagerNav } from './queue.tsx'
import type { BenchPage } from './view-bench.ts'

/** Every garment that was taken, by its pile: from here to its sheets. */
export function BenchView({ page }: { page: BenchPage }) {
  return (
    <main id="main" class="list" tabIndex={-1}>
      <h1>{page.title}</h1>
      {page.piles.length === 0 && <p class="card empty">{page.empty}</p>}
      {page.piles.map(({ title, line, papers, garments }) => (
        <section key={title} class="card benched" aria-label={title}>
          <h2>{title}</h2>
          <p class="hint quilt-line">{line}</p>
          <p class="benched-papers">
            {papers.map(({ label, href }) => (
              <a key={href} href={href}>
                {label}
              </a>
            ))}
          </p>
          <ul>
            {garments.map(({ tag, name, grade, href }) => (
              <li key={tag}>
                <span class="benched-tag">{tag}</span>
                {href ? <a href={href}>{name}</a> : <span>{name}</span>}
                {grade && <GradeMark grade={grade} />}
              </li>
            ))}
          </ul>
        </section>
      ))}
      <PagerNav pager={page.pager} />
    </main>
  )
}

import type { StatusNext as Next } from './view-status.ts'

/** The one thing that asks for attention. */
export const StatusNext = ({ next }: { next: Next }) => (
  <section
    class={`card status-next ${next.asks ? 'status-asks' : ''}`}
    aria-labelledby="next-title"
  >
    <h2 id="next-title">{next.title}</h2>
    <p>{next.text}</p>
    {next.link && (
      <p class="acts">
        <a class="button main" href={next.link.href}>
          {next.link.label}
        </a>
      </p>
    )}
  </section>
)

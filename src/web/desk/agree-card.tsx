import type { AgreeCard } from './view-agree.ts'

/** Whether a pile can be done in time, what is agreed, and what its customer changed. */
export function AgreeCardView({ card }: { card: AgreeCard }) {
  return (
    <section class="agree" aria-labelledby="agree-title">
      <h2 id="agree-title">{card.title}</h2>
      <ul class="agree-lines">
        {card.lines.map(({ text, tone }) => (
          <li key={text} class={`agree-${tone}`}>
            {text}
          </li>
        ))}
      </ul>
      {card.changed && (
        <div class="caution changed" role="note">
          <strong>{card.changed.title}</strong>
          <ul>
            {card.changed.sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      )}
      <p class="agree-links">
        {card.links.map(({ label, href }) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </p>
    </section>
  )
}

import type { OfferPaper } from '../../papers/offer-paper.ts'
import { describedBy, FieldRefusal, Hidden, SumRows, useSay } from './pieces.tsx'
import type { AcceptForm, OfferPage } from './view-status.ts'

/** An offer as it is kept, and the form to say yes to it. */
export function OfferView({ page }: { page: OfferPage }) {
  return (
    <main id="main" class="sheet" tabIndex={-1} data-offer={page.standing.state}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {page.paper.title}
        </h1>
        <p class={`offer-standing offer-${page.standing.state}`} role="status">
          {page.standing.sentence}
        </p>
        <OfferWords paper={page.paper} />
      </section>
      {page.accept && <Accept form={page.accept} />}
      <p class="asides">
        {page.ways.map(({ label, href }) => (
          <a key={href} class="aside-link" href={href}>
            {label}
          </a>
        ))}
      </p>
    </main>
  )
}

/** What an offer says: the same at the desk, before it is sent. */
export function OfferWords({ paper }: { paper: OfferPaper }) {
  const say = useSay()
  return (
    <div class="offer-words">
      <p>{paper.about}</p>
      <p class="quilt-line">{paper.quilt}</p>
      {paper.note && <p class="offer-note typed">{paper.note}</p>}
      <table class="lines">
        <caption class="unseen">{say('offer.lines')}</caption>
        <tbody>
          {paper.lines.map(({ label, amount, reason }, i) => (
            <tr key={`${i} ${label}`}>
              <th scope="row">
                {label}
                {reason && <span class="line-note">{reason}</span>}
              </th>
              <td>{amount}</td>
            </tr>
          ))}
        </tbody>
        <tbody class="offer-sums">
          <SumRows sums={paper.sums} />
        </tbody>
      </table>
      <dl class="terms">
        {paper.terms.map(({ label, text }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {paper.care && (
        <div class="offer-care">
          <p>
            <strong>{paper.care.title}</strong>
          </p>
          <ul class="policies">
            {paper.care.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      )}
      {paper.policies.length > 0 && (
        <div>
          {paper.rely && (
            <p>
              <strong>{paper.rely}</strong>
            </p>
          )}
          <ul class="policies">
            {paper.policies.map((policy) => (
              <li key={policy}>{policy}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  )
}

function Accept({ form }: { form: AcceptForm }) {
  const say = useSay()
  const { name, tick, other } = form.refusals
  return (
    <section class="card" aria-labelledby="accept-title">
      <h2 id="accept-title">{say('offer.accept.title')}</h2>
      {other && (
        <p class="errors" role="alert">
          {other}
        </p>
      )}
      <form method="post" action={form.postTo} noValidate>
        <Hidden fields={form.hidden} />
        <div class="field">
          <label class="legend" for="field-name">
            {say('offer.accept.name')}
          </label>
          <FieldRefusal field="name" sentence={name} />
          <input
            id="field-name"
            type="text"
            name="name"
            value={form.name}
            autoComplete="name"
            aria-describedby={describedBy(name !== null && 'error-name')}
            aria-invalid={name ? true : undefined}
          />
        </div>
        <div class="field">
          <FieldRefusal field="agree" sentence={tick} />
          <label class="accept-tick">
            <input
              id="field-agree"
              type="checkbox"
              name="agree"
              value="yes"
              checked={form.ticked}
              aria-describedby={describedBy(tick !== null && 'error-agree')}
              aria-invalid={tick ? true : undefined}
            />
            <span>{say('offer.accept.tick')}</span>
          </label>
        </div>
        <button type="submit" class="button main" data-act="accept-offer">
          {say('offer.accept.send')}
        </button>
      </form>
    </section>
  )
}

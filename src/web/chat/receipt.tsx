import { useSay } from './pieces.tsx'
import type { ReceiptPage } from './view-status.ts'

/** A receipt, to be read or printed. */
export function ReceiptView({ page }: { page: ReceiptPage }) {
  const say = useSay()
  return (
    <main id="main" class="sheet" tabIndex={-1} data-receipt="">
      <section class="card" aria-labelledby="title">
        <address>
          {page.shop.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </address>
        <h1 id="title" tabIndex={-1}>
          {page.title}
        </h1>
        <dl class="terms">
          {page.rows.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        {page.note && <p class="caution">{page.note}</p>}
      </section>
      <p class="asides">
        <a class="aside-link" href={page.backHref}>
          {say('offer.back')}
        </a>
      </p>
    </main>
  )
}

import { SumRows, useSay } from './pieces.tsx'
import type { StatusShown } from './view-status.ts'

/** What is agreed, paid and still to pay, with the papers of it. */
export function StatusMoney({ status: { money, offers } }: { status: StatusShown }) {
  const say = useSay()
  if (!money && offers.length === 0) return null
  return (
    <section class="card" aria-labelledby="money-title">
      <h2 id="money-title">{say(money ? 'status.money.title' : 'status.papers')}</h2>
      {money && (
        <table class="lines">
          <caption class="unseen">{say('status.money.title')}</caption>
          <tbody>
            <SumRows sums={money.rows} />
          </tbody>
        </table>
      )}
      <ul class="paper-links">
        {[...offers, ...(money?.receipts ?? [])].map(({ label, href }) => (
          <li key={href}>
            <a href={href}>{label}</a>
          </li>
        ))}
      </ul>
    </section>
  )
}

import { OfferWords } from '../chat/offer.tsx'
import { Hidden, SumRows, useSay } from '../chat/pieces.tsx'
import { AgreeCardView } from './agree-card.tsx'
import type { AgreementPage, DeskPayment } from './view-agree.ts'

/** What was agreed and paid of a pile, where its box is, and what its customer took back. */
export function AgreementView({ page }: { page: AgreementPage }) {
  const say = useSay()
  return (
    <main id="main" class="list agreement" tabIndex={-1}>
      <h1>{page.title}</h1>
      <p class="onward">
        <a href={page.back.href}>{page.back.label}</a>
      </p>
      {page.left.length > 0 && (
        <div class="card caution" role="note">
          {page.left.map((sentence) => (
            <p key={sentence} class="typed">
              {sentence}
            </p>
          ))}
        </div>
      )}
      <div class="card">
        <AgreeCardView card={page.card} />
      </div>
      <Money page={page} />
      <Steps page={page} />
      {page.offers.length > 0 && (
        <section class="card" aria-labelledby="offers-title">
          <h2 id="offers-title">{say('desk.agreement.offers')}</h2>
          {page.offers.map(({ version, sentence, paper, over }) => (
            <details key={version} class="told">
              <summary>{sentence}</summary>
              {over && <p class="caution">{over}</p>}
              <OfferWords paper={paper} />
            </details>
          ))}
        </section>
      )}
    </main>
  )
}

function Money({ page }: { page: AgreementPage }) {
  const say = useSay()
  return (
    <section class="card" aria-labelledby="money-title">
      <h2 id="money-title">{say('status.money.title')}</h2>
      {page.sums.length > 0 && (
        <table class="lines">
          <caption class="unseen">{say('status.money.title')}</caption>
          <tbody>
            <SumRows sums={page.sums} />
          </tbody>
        </table>
      )}
      <h3>{say('desk.agreement.ledger')}</h3>
      {page.payments.length === 0 ? (
        <p class="hint">{say('desk.agreement.no_payments')}</p>
      ) : (
        <ul class="ledger">
          {page.payments.map((payment) => (
            <Payment key={payment.receipt} payment={payment} />
          ))}
        </ul>
      )}
      <PaymentForm page={page} />
    </section>
  )
}

function Payment({ payment }: { payment: DeskPayment }) {
  const say = useSay()
  return (
    <li>
      <p>
        <strong>{payment.receipt}</strong> {payment.what}: <strong>{payment.amount}</strong>
      </p>
      <p class="hint">
        {payment.how} · {payment.by}
      </p>
      {payment.counter && (
        <details>
          <summary>{say('desk.agreement.counter')}</summary>
          <form method="post" action={payment.counter.postTo} noValidate>
            <Hidden fields={payment.counter.hidden} />
            <div class="field">
              <label class="legend" for={`why-${payment.receipt}`}>
                {say('desk.agreement.counter_why')}
              </label>
              <input id={`why-${payment.receipt}`} type="text" name="how" />
            </div>
            <button type="submit" class="button second">
              {say('desk.agreement.counter_send')}
            </button>
          </form>
        </details>
      )}
    </li>
  )
}

function PaymentForm({ page: { form, refusal } }: { page: AgreementPage }) {
  const say = useSay()
  return (
    <form method="post" action={form.postTo} id="take" noValidate>
      <Hidden fields={form.hidden} />
      <fieldset>
        <legend>{say('desk.agreement.take')}</legend>
        <p class="hint">{say('desk.agreement.no_cards')}</p>
        {refusal && (
          <p class="errors" role="alert">
            {refusal}
          </p>
        )}
        <div class="field">
          <label class="legend" for="take-kind">
            {say('receipt.kind')}
          </label>
          <select id="take-kind" name="kind">
            {(['deposit', 'balance', 'refund'] as const).map((kind) => (
              <option key={kind} value={kind} selected={kind === form.kind}>
                {say(`receipt.kinds.${kind}`)}
              </option>
            ))}
          </select>
        </div>
        <div class="field">
          <label class="legend" for="take-amount">
            {say('desk.agreement.amount', { currency: form.currency })}
          </label>
          <input
            id="take-amount"
            type="text"
            inputMode="decimal"
            name="amount"
            value={form.amount}
          />
        </div>
        <div class="field">
          <label class="legend" for="take-how">
            {say('receipt.how')}
          </label>
          <input id="take-how" type="text" name="how" value={form.how} />
        </div>
        <button type="submit" class="button main">
          {say('desk.agreement.send')}
        </button>
      </fieldset>
    </form>
  )
}

function Steps({ page: { steps, custody } }: { page: AgreementPage }) {
  const say = useSay()
  return (
    <section class="card" aria-labelledby="steps-title">
      <h2 id="steps-title">{say('desk.agreement.steps')}</h2>
      <ul class="ledger">
        {steps.map(({ step, label, reached, form }) => {
          const words = (
            <span>
              {label} {reached && <span class="hint">{reached}</span>}
            </span>
          )
          if (!form) {
            return (
              <li key={step} class="step-form">
                {words} <span class="hint">{say('desk.agreement.by_itself')}</span>
              </li>
            )
          }
          return (
            <li key={step}>
              <form method="post" action={form.postTo} class="step-form">
                <Hidden fields={form.hidden} />
                {words}
                <button type="submit" class="button second">
                  {say(reached ? 'desk.agreement.unreach' : 'desk.agreement.reach')}
                  <span class="unseen"> {label}</span>
                </button>
              </form>
            </li>
          )
        })}
      </ul>
      <p class="agree-links">
        <a href={custody.href}>{custody.label}</a>
      </p>
    </section>
  )
}

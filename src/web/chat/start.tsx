import { ActButton, Picture, useSay } from './pieces.tsx'
import type { Frame, StartPage } from './view.ts'

const steps = ['gather', 'answer', 'pack'] as const
const pictures = { gather: 'other', answer: 'tshirt', pack: 'parcel' } as const

/** The shop's own first page: what will happen, how long it takes, and one button. */
export function StartView({ page, frame }: { page: StartPage; frame: Frame }) {
  const say = useSay()
  return (
    <main id="main" class="sheet start" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {frame.shop.tagline ?? say('start.title')}
        </h1>
        {page.welcome.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <p class="help">{say('start.help')}</p>
        <ActButton action={page.start} look="main" />
        <p class="hint">{say('start.saved')}</p>
      </section>
      <section aria-labelledby="how-title">
        <h2 id="how-title">{say('start.how')}</h2>
        <ol class="how">
          {steps.map((step) => (
            <li key={step}>
              <Picture name={pictures[step]} />
              <span>{say(`start.steps.${step}`)}</span>
            </li>
          ))}
        </ol>
      </section>
    </main>
  )
}

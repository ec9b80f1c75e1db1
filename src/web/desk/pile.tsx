import type { ComponentChildren } from 'preact'
import { GradeMark, useSay } from '../chat/pieces.tsx'
import { Answers } from '../chat/tag.tsx'
import { AgreeCardView } from './agree-card.tsx'
import { Decision } from './decision.tsx'
import { EffectPanel } from './effect.tsx'
import { FoldedGarment, GarmentCard } from './garment.tsx'
import { ThreadShown } from './messages.tsx'
import { Entries } from './queue.tsx'
import type { DeskGarment, PilePage } from './view.ts'

/** Three columns that read from left to right: what waits, what it is, what it does to the quilt. */
export function PileView({ page }: { page: PilePage }) {
  const say = useSay()
  return (
    <main id="main" class="columns" tabIndex={-1} data-pile-at-desk="">
      <section class="column what-it-is" aria-labelledby="title">
        <PileCard page={page} />
        <Garments title={say('desk.looking')} id="looking" garments={page.looking}>
          {(garment) => <GarmentCard key={garment.n} garment={garment} csrf={page.form.csrf} />}
        </Garments>
        <Garments title={say('desk.others')} id="others" garments={page.others}>
          {(garment) => <FoldedGarment key={garment.n} garment={garment} csrf={page.form.csrf} />}
        </Garments>
      </section>
      <aside class="column what-waits card" aria-labelledby="waiting-title">
        <h2 id="waiting-title">{say('desk.queue.title.us')}</h2>
        {page.waiting.length === 0 ? (
          <p class="hint">{say('desk.queue.empty.us')}</p>
        ) : (
          <Entries entries={page.waiting} />
        )}
      </aside>
      <aside class="column what-it-does card" aria-labelledby="effect-title">
        <EffectPanel effect={page.effect} />
        <AgreeCardView card={page.agree} />
        <Decision form={page.form} id="decide" title={say('desk.decide.pile')} />
      </aside>
    </main>
  )
}

function PileCard({ page }: { page: PilePage }) {
  const say = useSay()
  return (
    <div class="card pile">
      {page.refused && (
        <p class="errors" role="alert">
          <a href={page.refused.href}>{page.refused.sentence}</a>
        </p>
      )}
      <h1 id="title">
        {page.title} <span class="quilt">{page.quilt}</span>
      </h1>
      <Contact contact={page.contact} />
      <p class="lines-of-pile">{page.lines.join(' · ')}</p>
      <p class="onward">
        <a href={page.plan.href}>{page.plan.label}</a>{' '}
        <a href={page.whatIf.href}>{page.whatIf.label}</a>{' '}
        <a href={page.messages.href}>{page.messages.label}</a>{' '}
        <a href={page.kept.href}>{page.kept.label}</a>{' '}
        {page.custody.map(({ label, href }) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </p>
      <details class="told">
        <summary>{say('printed.sheets.title')}</summary>
        <ul>
          {page.papers.map(({ label, href }) => (
            <li key={href} class="onward">
              <a href={href}>{label}</a>
            </li>
          ))}
        </ul>
      </details>
      {page.notToCut && (
        <div class="caution" role="note">
          <strong>{say('desk.not_to_cut')}</strong>
          <p class="typed">{page.notToCut}</p>
        </div>
      )}
      <ThreadShown thread={page.thread} csrf={page.form.csrf} />
      <Index garments={[...page.looking, ...page.others]} />
      <details class="told">
        <summary>{say('desk.pile_answers', { count: page.answers.length })}</summary>
        <Answers answers={page.answers} about={null} />
      </details>
    </div>
  )
}

function Contact({ contact }: { contact: PilePage['contact'] }) {
  if (!contact) return null
  const { name, email, phone } = contact
  return (
    <p class="contact">
      <span>{name}</span>
      {email && <a href={`mailto:${encodeURI(email)}`}>{email}</a>}
      {phone && <a href={`tel:${phone.replaceAll(/[^\d+]/g, '')}`}>{phone}</a>}
    </p>
  )
}

/** Every garment in one line each, those that wait for a decision first. */
function Index({ garments }: { garments: readonly DeskGarment[] }) {
  const say = useSay()
  return (
    <nav aria-label={say('desk.index')}>
      <ol class="index" data-arrows="">
        {garments.map(({ n, name, grade, waits, form }) => (
          <li key={n}>
            <a href={`#garment-${n}`}>
              <span class="index-name">
                {n} · {name}
              </span>
              {form.standing ? (
                <span class="index-standing">{form.standing.words}</span>
              ) : (
                grade && <GradeMark grade={grade} />
              )}
              {waits && <span class="unseen"> {say('desk.waits')}</span>}
            </a>
          </li>
        ))}
      </ol>
    </nav>
  )
}

function Garments({
  title,
  id,
  garments,
  children,
}: {
  title: string
  id: string
  garments: readonly DeskGarment[]
  children: (garment: DeskGarment) => ComponentChildren
}) {
  if (garments.length === 0) return null
  return (
    <section aria-labelledby={id}>
      <h2 id={id} class="group">
        {title}
      </h2>
      {garments.map(children)}
    </section>
  )
}

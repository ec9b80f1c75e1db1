import { GradeMark, Hidden, useSay } from '../chat/pieces.tsx'
import type { FactField, FactSetLine, FactsEffect, FactsPage } from './view-facts.ts'

/** What the workshop knows better of a garment: chosen, looked at for what it does, then kept with a reason. */
export function FactsView({ page }: { page: FactsPage }) {
  const say = useSay()
  const { back, title, error, effect, fields, postTo, csrf, seen, reason } = page
  return (
    <main id="main" class="list set-facts" tabIndex={-1}>
      <p class="onward">
        <a href={back.href}>{back.label}</a>
      </p>
      <h1>{title}</h1>
      <p class="hint">{say('desk.set.help')}</p>
      <form method="post" action={postTo} class="card">
        <Hidden fields={{ csrf, seen: String(seen) }} />
        {error && (
          <p class="refusal" id="set-error" role="alert">
            {error}
          </p>
        )}
        <div class="fact-fields">
          {fields.map((field) => (
            <Field key={field.name} field={field} />
          ))}
        </div>
        <button type="submit" name="act" value="try" class="button second">
          {say('desk.set.try')}
        </button>
        {effect && <EffectOfFacts effect={effect} />}
        <div class="field">
          <label class="legend" for="set-reason">
            {say('desk.reason.label')}
          </label>
          <p class="hint" id="set-reason-hint">
            {say('desk.set.reason')}
          </p>
          <textarea
            id="set-reason"
            name="reason"
            rows={2}
            aria-describedby={error ? 'set-error set-reason-hint' : 'set-reason-hint'}
            aria-invalid={error ? true : undefined}
          >
            {reason}
          </textarea>
        </div>
        <button type="submit" name="act" value="save" class="button main">
          {say('desk.set.save')}
        </button>
      </form>
      <Sets page={page} />
    </main>
  )
}

function Field({ field }: { field: FactField }) {
  const say = useSay()
  const { name, label, now, value, options, changed } = field
  return (
    <div class={changed ? 'fact-field changed' : 'fact-field'}>
      <label for={`set-${name}`}>{label}</label>
      <select id={`set-${name}`} name={name} aria-describedby={`set-${name}-now`}>
        {options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === value}>
            {option.label}
          </option>
        ))}
      </select>
      <span class="hint" id={`set-${name}-now`}>
        {changed ? say('desk.set.was', { now }) : now}
      </span>
    </div>
  )
}

function EffectOfFacts({ effect }: { effect: FactsEffect }) {
  const say = useSay()
  const { before, after, sentences } = effect
  return (
    <section class="set-effect" aria-labelledby="set-effect">
      <h2 id="set-effect">{say('desk.set.effect')}</h2>
      {before && after && (
        <p class="from-to">
          <GradeMark grade={before} /> <span>{say('desk.set.becomes')}</span>{' '}
          <GradeMark grade={after} />
        </p>
      )}
      <ul>
        {sentences.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <p class="hint">{say('desk.set.not_yet')}</p>
    </section>
  )
}

function Sets({ page }: { page: FactsPage }) {
  const say = useSay()
  if (page.sets.length === 0) return null
  return (
    <section class="card" aria-labelledby="sets-title">
      <h2 id="sets-title">{say('desk.set.sets')}</h2>
      <ol class="fact-sets">
        {page.sets.map((set) => (
          <li key={set.id}>
            <SetWords set={set} />
            {!set.undone && (
              <form method="post" action={page.undoAt}>
                <Hidden fields={{ csrf: page.csrf, set: set.id }} />
                <button type="submit" class="button quiet">
                  {say('desk.set.undo')}
                  <span class="unseen"> {set.words}</span>
                </button>
              </form>
            )}
          </li>
        ))}
      </ol>
    </section>
  )
}

const SetWords = ({ set }: { set: FactSetLine }) => (
  <div>
    <p>
      {set.undone ? <s>{set.words}</s> : <strong>{set.words}</strong>}{' '}
      <span class="by">{set.by}</span>
    </p>
    <p class="typed">{set.reason}</p>
    {set.undone && <p class="by">{set.undone}</p>}
  </div>
)

import { Hidden, useSay } from '../chat/pieces.tsx'
import type { Decided, DecisionForm } from './view.ts'

/** What stands, how it came to that, and the buttons to decide. `id` names the form on its page. */
export function Decision({ form, id, title }: { form: DecisionForm; id: string; title: string }) {
  const say = useSay()
  return (
    <div class="decision">
      {form.standing && <Standing decided={form.standing} />}
      {form.history.length > 0 && <History history={form.history} />}
      {form.standing && !form.error ? (
        <details class="again">
          <summary>{say('desk.again')}</summary>
          <Form form={form} id={id} title={title} />
        </details>
      ) : (
        <Form form={form} id={id} title={title} />
      )}
    </div>
  )
}

const Standing = ({ decided }: { decided: Decided }) => (
  <div class={`standing standing-${decided.verdict}`}>
    <p>
      <strong>{decided.words}</strong> <span class="by">{decided.by}</span>
    </p>
    {decided.reason && <p class="typed">{decided.reason}</p>}
  </div>
)

function History({ history }: { history: readonly Decided[] }) {
  const say = useSay()
  return (
    <details class="history">
      <summary>{say('desk.history', { count: history.length })}</summary>
      <ol>
        {history.map((decided) => (
          <li key={decided.by}>
            {decided.words} <span class="by">{decided.by}</span>
            {decided.reason && <p class="typed">{decided.reason}</p>}
          </li>
        ))}
      </ol>
    </details>
  )
}

function Form({ form, id, title }: { form: DecisionForm; id: string; title: string }) {
  const { csrf, seen, error } = form
  const describedBy = [error && `${id}-error`, `${id}-hint`].filter(Boolean).join(' ')
  return (
    <form method="post" action={form.postTo} id={id} noValidate>
      <Hidden fields={{ csrf, seen: String(seen) }} />
      <fieldset>
        <legend>{title}</legend>
        {error && (
          <p class="refusal" id={`${id}-error`}>
            {error}
          </p>
        )}
        <Reason form={form} id={id} describedBy={describedBy} />
        {form.send && (
          <div class="option">
            <input type="checkbox" id={`${id}-send`} name="send" value="1" />
            <label for={`${id}-send`}>{form.send}</label>
          </div>
        )}
        <div class="verdicts">
          {form.buttons.map(({ value, label, standing, reasoned }) => (
            <button
              key={value}
              type="submit"
              name="verdict"
              value={value}
              class={`button verdict verdict-${value}`}
              {...(standing && { 'data-standing': '' })}
              {...(reasoned && { 'data-reasoned': '' })}
            >
              {label}
            </button>
          ))}
        </div>
      </fieldset>
    </form>
  )
}

function Reason({
  form,
  id,
  describedBy,
}: {
  form: DecisionForm
  id: string
  describedBy: string
}) {
  const say = useSay()
  return (
    <div class="field">
      <label class="legend" for={`${id}-reason`}>
        {say('desk.reason.label')}
      </label>
      <p class="hint" id={`${id}-hint`}>
        {form.hint}
      </p>
      <textarea
        id={`${id}-reason`}
        name="reason"
        rows={2}
        aria-describedby={describedBy}
        aria-invalid={form.error ? true : undefined}
      >
        {form.reason}
      </textarea>
    </div>
  )
}

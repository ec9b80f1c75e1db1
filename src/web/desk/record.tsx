import { Cautions, Hidden, useSay } from '../chat/pieces.tsx'
import { Choices, PhotoField, PlaceField, Places, Refused } from './custody-pieces.tsx'
import type {
  RecordField,
  RecordForm,
  RecordLine,
  RecordPage,
  RecordSection,
} from './view-record.ts'

/** What the bench writes down of one garment, from the release of its cut to what was found in it. */
export function RecordView({ page }: { page: RecordPage }) {
  const say = useSay()
  return (
    <main id="main" class="list custody record" tabIndex={-1}>
      <nav class="onward" aria-label={say('records.links')}>
        {page.links.map(({ label, href }) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </nav>
      <h1>
        <span class="located-code">{page.code}</span> {page.name}
      </h1>
      <p class="now-at">{page.at}</p>
      {page.stopped && <p class="card now-apart record-stopped">{page.stopped}</p>}
      <Refused sentence={page.refused} />
      {page.sections.map((section) => (
        <Section key={section.id} section={section} hidden={page.hidden} />
      ))}
      <Places places={page.places} />
    </main>
  )
}

type HiddenFields = RecordPage['hidden']

export function Section({ section, hidden }: { section: RecordSection; hidden: HiddenFields }) {
  const say = useSay()
  const { id, title, lead, checks, lines, forms, closed } = section
  return (
    <section class="card" id={id} aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{title}</h2>
      <p class="hint">{lead}</p>
      {checks.length > 0 && (
        <ul class="record-checks">
          {checks.map(({ label, done }) => (
            <li key={label} class={done ? 'check-there' : 'check-open'}>
              <span class="mark">{say(done ? 'records.there' : 'records.lacking')}</span> {label}
            </li>
          ))}
        </ul>
      )}
      {lines.length > 0 && (
        <ol class="history">
          {lines.map((line) => (
            <Line key={line.seq} line={line} hidden={hidden} />
          ))}
        </ol>
      )}
      {closed && <p class="hint">{closed}</p>}
      {forms.map((form) => (
        <Form key={form.act} form={form} hidden={hidden} />
      ))}
    </section>
  )
}

function Line({ line, hidden }: { line: RecordLine; hidden: HiddenFields }) {
  const say = useSay()
  const { what, by, note, undone, photos, undo } = line
  return (
    <li class={undone ? 'undone' : undefined}>
      <p class="history-what">
        {undone ? <s>{what}</s> : what}{' '}
        {undone && <span class="mark">{say('custody.subject.undone')}</span>}
      </p>
      <p class="hint">{by}</p>
      {note && <p class="typed">{note}</p>}
      {undone && <p class="hint">{undone}</p>}
      {photos.length > 0 && (
        <p class="record-photos">
          {photos.map(({ id, view, thumb, alt }) => (
            <a key={id} href={view}>
              <img src={thumb} alt={alt} width={96} height={96} />
            </a>
          ))}
        </p>
      )}
      {undo && <Form form={undo} hidden={{ ...hidden, record: String(line.seq) }} />}
    </li>
  )
}

function Form({ form, hidden }: { form: RecordForm; hidden: HiddenFields }) {
  const say = useSay()
  const { act, label, postTo, cautions, fields, photo, open } = form
  const id = (name: string) => `${act}-${hidden.record ?? ''}-${name}`
  return (
    <details class="move" open={open}>
      <summary>{label}</summary>
      <form
        method="post"
        action={postTo}
        {...(photo !== 'none' && { encType: 'multipart/form-data' })}
      >
        <Hidden fields={{ ...hidden, act }} />
        <Cautions texts={cautions} />
        {fields.map((field) => (
          <Field key={field.name} field={field} id={id(field.name)} />
        ))}
        {photo !== 'none' && (
          <PhotoField
            id={id('photo')}
            name="photo"
            label={say(photo === 'one' ? 'custody.field.photo' : 'laid_out.desk.photos')}
            multiple={photo === 'several'}
          />
        )}
        <button type="submit" class="button main">
          {label}
        </button>
      </form>
    </details>
  )
}

function Field({ field, id }: { field: RecordField; id: string }) {
  const { name, label, hint, kind, options, value, required } = field
  if (kind === 'choice') {
    const chosen = value === '' ? [] : [value]
    return <Choices {...{ id, name, options, chosen }} legend={label} type="radio" />
  }
  if (kind === 'place') return <PlaceField {...{ id, name, label, value, required }} />
  return (
    <div class="field">
      <label class="legend" for={id}>
        {label}
      </label>
      {hint && <p class="hint">{hint}</p>}
      {kind === 'words' ? (
        <textarea id={id} name={name} rows={2} required={required}>
          {value}
        </textarea>
      ) : kind === 'list' ? (
        <select id={id} name={name}>
          {options.map((one) => (
            <option key={one.value} value={one.value} selected={one.value === value}>
              {one.label}
            </option>
          ))}
        </select>
      ) : kind === 'day' ? (
        <input type="date" id={id} name={name} value={value} required={required} />
      ) : (
        <input
          type="text"
          id={id}
          name={name}
          value={value}
          required={required}
          {...(kind === 'number' && { inputMode: 'numeric' as const })}
        />
      )}
    </div>
  )
}

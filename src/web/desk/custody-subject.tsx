import { Cautions, Hidden, useSay, WordsField } from '../chat/pieces.tsx'
import { Choices, PhotoField, PlaceField, Places, Refused } from './custody-pieces.tsx'
import type { HistoryLine, MoveForm, SubjectPage } from './view-custody.ts'

/** One thing: where it is, what can happen to it now, and what happened. */
export function SubjectView({ page }: { page: SubjectPage }) {
  const say = useSay()
  return (
    <main id="main" class="list custody" tabIndex={-1}>
      <nav class="onward" aria-label={say('custody.subject.back')}>
        {page.links.map(({ label, href }) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </nav>
      <h1>
        <span class="located-code">{page.code}</span> {page.name}
      </h1>
      <Refused sentence={page.refused} />
      <section class={page.isolated ? 'card now now-apart' : 'card now'} aria-labelledby="now">
        <h2 id="now">{say('custody.subject.now')}</h2>
        <p class="now-at">{page.at}</p>
        <p class="hint">
          {page.since} · {page.by}
        </p>
        {page.checked && <p class="hint">{page.checked}</p>}
        <Cautions texts={page.cautions} />
      </section>
      <section class="card" aria-labelledby="moves">
        <h2 id="moves">{say('custody.subject.moves')}</h2>
        {page.moves.length === 0 && <p class="hint">{say('custody.subject.no_moves')}</p>}
        {page.moves.map((move) => (
          <Move key={move.move} move={move} page={page} />
        ))}
        {page.shut.length > 0 && (
          <>
            <h3>{say('custody.subject.not_yet')}</h3>
            <ul class="shut">
              {page.shut.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </>
        )}
      </section>
      <section class="card" aria-labelledby="history">
        <h2 id="history">{say('custody.subject.history')}</h2>
        <ol class="history" reversed>
          {page.history.map((line) => (
            <Line key={line.seq} line={line} />
          ))}
        </ol>
        {page.takeBack && <TakeBack page={page} />}
      </section>
      <Places places={page.form.places} />
    </main>
  )
}

const sentWith = ({ form }: SubjectPage, act: string) => ({
  csrf: form.csrf,
  idem: form.idem,
  seen: String(form.seen),
  act,
})

function Move({ move, page }: { move: MoveForm; page: SubjectPage }) {
  const say = useSay()
  const { label, caution, place, why, parcels, conditions, hint } = move
  const typed = page.typed?.move === move.move ? page.typed : null
  const id = (name: string) => `${name}-${move.move}`
  return (
    <details class="move" open={typed !== null}>
      <summary>{label}</summary>
      <form method="post" action={page.form.postTo} encType="multipart/form-data">
        <Hidden fields={sentWith(page, move.move)} />
        {caution && <Cautions texts={[caution]} />}
        {hint && <p class="hint">{hint}</p>}
        {parcels.length > 0 && (
          <Choices
            id={id('parcel')}
            name="parcel"
            legend={say('custody.field.parcel')}
            type="radio"
            options={parcels}
            chosen={[parcels[0]!.value]}
          />
        )}
        {conditions.length > 0 && (
          <Choices
            id={id('condition')}
            name="condition"
            legend={say('custody.field.condition')}
            type="checkbox"
            options={conditions}
            chosen={[]}
          />
        )}
        {place && (
          <PlaceField
            id={id('place')}
            label={place.label}
            value={typed?.place ?? ''}
            required={place.required}
          />
        )}
        <WordsField
          id={id('note')}
          name="note"
          label={say(why ? 'custody.field.why' : 'custody.field.note')}
          value={typed?.note ?? ''}
          required={why}
        />
        <PhotoField id={id('photo')} name="photo" label={say('custody.field.photo')} />
        <button type="submit" class="button main">
          {label}
        </button>
      </form>
    </details>
  )
}

function Line({ line }: { line: HistoryLine }) {
  const say = useSay()
  const { what, by, note, undone, photo } = line
  return (
    <li class={undone ? 'undone' : undefined}>
      <p class="history-what">
        {undone ? <s>{what}</s> : what}
        {undone && <span class="mark">{say('custody.subject.undone')}</span>}
      </p>
      <p class="hint">{by}</p>
      {note && <p class="typed">{note}</p>}
      {photo && (
        <a href={photo.view}>
          <img src={photo.thumb} alt={photo.alt} width={96} height={96} />
        </a>
      )}
    </li>
  )
}

function TakeBack({ page }: { page: SubjectPage }) {
  const say = useSay()
  return (
    <details class="move" open={page.typed?.move === 'undo'}>
      <summary>{say('custody.subject.take_back')}</summary>
      <form method="post" action={page.form.postTo}>
        <Hidden fields={sentWith(page, 'undo')} />
        <p class="hint">{say('custody.subject.take_back_help')}</p>
        <WordsField id="note-undo" name="note" label={say('custody.field.why')} required />
        <button type="submit" class="button second">
          {say('custody.subject.take_back')}
        </button>
      </form>
    </details>
  )
}

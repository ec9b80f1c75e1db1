import { Cautions, Hidden, useSay, WordsField } from '../chat/pieces.tsx'
import { Choices, PhotoField, PlaceField, Places, Refused } from './custody-pieces.tsx'
import type { BoxChangedPage, BoxCheckPage, BoxFact, BoxGarment } from './view-custody.ts'

/** The list beside an opened box: what is here, what is not, what is otherwise than it was told. */
export function BoxCheckView({ page }: { page: BoxCheckPage }) {
  const say = useSay()
  const { form } = page
  return (
    <main id="main" class="list custody" tabIndex={-1}>
      <p class="onward">
        <a href={page.back.href}>{page.back.label}</a>
      </p>
      <h1>{page.title}</h1>
      <Refused sentence={page.refused} />
      {page.closed ? (
        <p class="card">{page.closed}</p>
      ) : (
        <form method="post" action={form.postTo} encType="multipart/form-data" class="box-form">
          <Hidden fields={{ csrf: form.csrf, idem: form.idem, parcel: form.parcel }} />
          <p class="help">{page.lead}</p>
          <Cautions texts={page.cautions} />
          {page.garments.map((garment) => (
            <Garment key={garment.n} garment={garment} page={page} />
          ))}
          <section class="card" aria-labelledby="extra">
            <h2 id="extra">{say('custody.box.extra')}</h2>
            <WordsField
              id="extra-note"
              name="extra-note"
              label={say('custody.box.extra_help')}
              value={page.extra.note}
            />
            <Choices
              id="extra-condition"
              name="extra-condition"
              legend={say('custody.box.condition')}
              type="checkbox"
              options={page.conditions}
              chosen={page.extra.conditions}
            />
          </section>
          <section class="card" aria-label={say('custody.box.save')}>
            <PlaceField id="place" label={say('custody.box.place')} value={page.place} />
            <label class="choice" for="emptied">
              <input type="checkbox" id="emptied" name="emptied" value="yes" />
              <span>{say('custody.box.emptied')}</span>
            </label>
            <p>
              <button type="submit" class="button main">
                {say('custody.box.save')}
              </button>
            </p>
          </section>
        </form>
      )}
      <Places places={form.places} />
    </main>
  )
}

function Garment({ garment, page }: { garment: BoxGarment; page: BoxCheckPage }) {
  const say = useSay()
  const { n, code, name, told, before, photo, result, seen, factsSeen, facts } = garment
  return (
    <section class="card box-garment" aria-labelledby={`garment-${n}`}>
      {photo && <img src={photo.thumb} alt={photo.alt} width={72} height={72} />}
      <h2 id={`garment-${n}`}>
        <span class="located-code">{code}</span> {name}
      </h2>
      <p class="hint">{told}</p>
      {before && <p class="mark">{before}</p>}
      <Hidden fields={{ [`seen-${n}`]: String(seen), [`facts-seen-${n}`]: String(factsSeen) }} />
      <Choices
        id={`result-${n}`}
        name={`result-${n}`}
        legend={say('custody.box.result.name')}
        type="radio"
        options={page.results}
        chosen={[result]}
      />
      <details open={result === 'different'}>
        <summary>
          {say('custody.box.differs')} <span class="unseen">{code}</span>
        </summary>
        <div class="fields">
          {facts.map((fact) => (
            <Fact key={fact.name} fact={fact} />
          ))}
        </div>
      </details>
      <details open={garment.conditions.length > 0 || garment.note !== ''}>
        <summary>
          {say('custody.box.condition')} <span class="unseen">{code}</span>
        </summary>
        <Choices
          id={`condition-${n}`}
          name={`condition-${n}`}
          legend={say('custody.box.condition')}
          type="checkbox"
          options={page.conditions}
          chosen={garment.conditions}
        />
        <WordsField
          id={`note-${n}`}
          name={`note-${n}`}
          label={say('custody.box.note')}
          value={garment.note}
        />
        <PhotoField
          id={`photos-${n}`}
          name={`photos-${n}`}
          label={say('custody.box.photos')}
          multiple
        />
      </details>
    </section>
  )
}

function Fact({ fact }: { fact: BoxFact }) {
  const { name, label, hint, options, value } = fact
  return (
    <div class="field">
      <label class="legend" for={name}>
        {label}
      </label>
      {options ? (
        <select id={name} name={name}>
          {options.map((option) => (
            <option key={option.value} value={option.value} selected={option.value === value}>
              {option.label}
            </option>
          ))}
        </select>
      ) : (
        <textarea
          id={name}
          name={name}
          rows={2}
          aria-describedby={hint ? `${name}-hint` : undefined}
        >
          {value}
        </textarea>
      )}
      {hint && (
        <p class="hint" id={`${name}-hint`}>
          {hint}
        </p>
      )}
    </div>
  )
}

/** What the box check made of grades and of the plan. */
export function BoxChangedView({ page }: { page: BoxChangedPage }) {
  return (
    <main id="main" class="list custody" tabIndex={-1}>
      <p class="onward">
        <a href={page.back.href}>{page.back.label}</a>
      </p>
      <h1>{page.title}</h1>
      <section class="card" aria-label={page.title}>
        {page.nothing && <p>{page.nothing}</p>}
        <ul class="shut">
          {page.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        {page.planHint && <p class="hint">{page.planHint}</p>}
        {page.plan && (
          <p>
            <a class="button main" href={page.plan.href}>
              {page.plan.label}
            </a>
          </p>
        )}
      </section>
    </main>
  )
}

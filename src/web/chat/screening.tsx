import { Cautions, Hidden, OptionWords, Picture, useSay } from './pieces.tsx'
import type { Option } from './view.ts'
import type { Alike, Mark, MarkGroup, ScreeningPage } from './view-closet.ts'

/** Garments looked over together: what was read of each, then what could keep one at home. */
export function ScreeningView({ page }: { page: ScreeningPage }) {
  const say = useSay()
  return (
    <main id="main" class="sheet" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say('screening.title')}
        </h1>
        <form method="post" action={page.postTo} noValidate data-closet="screening">
          <Hidden fields={page.hidden} />
          <h2>{say('screening.read')}</h2>
          <p class="help">{say('screening.readHelp')}</p>
          {page.alike.map((alike) => (
            <OneAlike key={alike.id} alike={alike} />
          ))}
          <h2>{say('screening.true')}</h2>
          <p class="help">{say('screening.trueHelp')}</p>
          {page.groups.map((group) => (
            <Group key={group.question} group={group} />
          ))}
          <p class="help">{say('screening.after')}</p>
          <div class="go">
            <button
              type="submit"
              name="act"
              value="screened"
              data-act="screened"
              class="button main"
            >
              {say('screening.send')}
            </button>
          </div>
        </form>
        <a class="aside-link" href={page.backHref}>
          {say('screening.back')}
        </a>
      </section>
    </main>
  )
}

function Tick({ name, option }: { name: string; option: Option }) {
  const id = `${name}-${option.value.replaceAll(/[:.]/g, '-')}`
  return (
    <div class="option">
      <input
        type="checkbox"
        id={id}
        name={name}
        value={option.value}
        checked={option.chosen}
        aria-describedby={option.help ? `${id}-help` : undefined}
      />
      <label for={id}>
        <OptionWords id={id} option={option} />
      </label>
    </div>
  )
}

/** What was read of garments that are called alike, in one line; what was not read is asked for below it. */
function OneAlike({ alike: { id, name, count, parts, kinds, sizes } }: { alike: Alike }) {
  const say = useSay()
  const named = `name-${id.replaceAll('.', '-')}`
  const sure = parts.filter(({ chosen }) => chosen)
  return (
    <fieldset class="alike" data-garments={id} aria-labelledby={named}>
      <details class="mark-fold" open={sure.length < parts.length}>
        <summary>
          <span>
            <strong id={named}>{say('screening.alike', { name, count })}</strong>
            <span class="option-help">{sure.map(({ label }) => label).join(' · ')}</span>
          </span>
        </summary>
        {parts.map((part) => (
          <Tick key={part.value} name="right" option={{ ...part, value: `${id}:${part.value}` }} />
        ))}
        <Tick
          name="alone"
          option={{
            value: id,
            label: say('screening.alone', { count }),
            help: null,
            drawing: null,
            chosen: false,
          }}
        />
      </details>
      <Choose id={id} name="kind" options={kinds} />
      <Choose id={id} name="size" options={sizes} />
    </fieldset>
  )
}

function Choose({
  id,
  name,
  options,
}: {
  id: string
  name: 'kind' | 'size'
  options: readonly Option[]
}) {
  const say = useSay()
  if (options.length === 0) return null
  return (
    <label class="choose">
      {say(`intake.${name}.ask`)}
      <select name={name}>
        <option value="">{say('screening.later')}</option>
        {options.map(({ value, label }) => (
          <option key={value} value={`${id}:${value}`}>
            {label}
          </option>
        ))}
      </select>
    </label>
  )
}

function Group({ group }: { group: MarkGroup }) {
  return (
    <section class="mark-group" aria-labelledby={`marks-${group.question}`}>
      <h3 id={`marks-${group.question}`}>{group.title}</h3>
      {group.drawing && <Picture name={group.drawing} told />}
      <Cautions texts={group.cautions} />
      {group.marks.map((mark) => (
        <OneMark key={mark.id} mark={mark} />
      ))}
    </section>
  )
}

/** Open where words told that it is so. */
function OneMark({ mark: { id, words, garments } }: { mark: Mark }) {
  return (
    <details class="mark-fold" data-mark={id} open={garments.some(({ chosen }) => chosen)}>
      <summary>{words}</summary>
      {garments.map((garment) => (
        <Tick key={garment.value} name="mark" option={garment} />
      ))}
    </details>
  )
}

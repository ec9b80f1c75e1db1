import { GradeMark, Picture, useSay } from '../chat/pieces.tsx'
import { MarkedPicture } from '../chat/spots.tsx'
import { Swatch } from '../chat/swatch.tsx'
import { Answers } from '../chat/tag.tsx'
import type { MarkedPhoto } from '../chat/view-question.ts'
import { BetterSteps } from './better.tsx'
import { Decision } from './decision.tsx'
import { DecideFlag } from './flag.tsx'
import { LabelSeen } from './label.tsx'
import { ThreadShown } from './messages.tsx'
import { SpotsTold } from './spots.tsx'
import type { DeskGarment, DeskPhoto, FactLine, StaffFlag } from './view.ts'
import { Reckoned, Why } from './why.tsx'

interface Shown {
  readonly garment: DeskGarment
  readonly csrf: string
}

const dataOf = ({ n, grade }: DeskGarment) => ({
  id: `garment-${n}`,
  'aria-labelledby': `garment-${n}-title`,
  'data-garment': n,
  ...(grade && { 'data-grade': grade }),
})

/** One garment as staff look at it: why it is doubtful, what is known of it, and what becomes of it. */
export function GarmentCard(shown: Shown) {
  return (
    <article class="card garment" {...dataOf(shown.garment)}>
      <Name garment={shown.garment} />
      <Body {...shown} />
    </article>
  )
}

/** The same behind one line, for what needs no second look. Open where something waits for an answer. */
export function FoldedGarment(shown: Shown) {
  const { form, thread } = shown.garment
  const open = form.error !== null || thread.waits
  return (
    <details class="card garment garment-folded" open={open} {...dataOf(shown.garment)}>
      <summary>
        <Name garment={shown.garment} />
      </summary>
      <Body {...shown} />
    </details>
  )
}

function Name({ garment }: { garment: DeskGarment }) {
  const say = useSay()
  const { n, name, grade, kindWords, code, form, label } = garment
  const sort = [kindWords, say('thread.code', { code })].filter(Boolean).join(' · ')
  return (
    <div class="garment-name">
      <h3 id={`garment-${n}-title`}>
        {n} · {name}
      </h3>
      <p class="sort">
        {grade && <GradeMark grade={grade} />}
        <span>{sort}</span>
        {form.standing && <strong>{form.standing.words}</strong>}
        {label?.doubted && <strong class="to-check">{say('desk.label.check')}</strong>}
      </p>
    </div>
  )
}

function Body({ garment, csrf }: Shown) {
  const say = useSay()
  const { n, name, form } = garment
  return (
    <>
      <div class="seen-and-said">
        <Pictures garment={garment} />
        <Flags garment={garment} />
      </div>
      <SpotsTold spots={garment.spots} />
      <LabelSeen garment={garment} />
      <ThreadShown thread={garment.thread} csrf={csrf} />
      {garment.prospects.length > 0 && <p class="prospects">{garment.prospects.join(' ')}</p>}
      <Decision form={form} id={`decide-${n}`} title={say('desk.decide.garment', { n, name })} />
      {garment.teardown && (
        <p class="onward">
          <a href={garment.teardown.href}>{garment.teardown.label}</a>
        </p>
      )}
      {garment.whatIf && (
        <p class="onward">
          <a href={garment.whatIf.href}>{garment.whatIf.label}</a>
        </p>
      )}
      {garment.next && (
        <p class="onward">
          <a href={garment.next.href}>{garment.next.label}</a>
        </p>
      )}
      <BetterSteps garment={garment} />
      <Facts garment={garment} />
      <Reckoned parts={garment.reckoned} />
      <details class="told">
        <summary>{say('desk.answers', { count: garment.answers.length })}</summary>
        <Answers answers={garment.answers} about={null} />
      </details>
    </>
  )
}

function Pictures({ garment }: { garment: DeskGarment }) {
  const say = useSay()
  if (garment.photos.length === 0) {
    return (
      <div class="pictures no-photo">
        <Picture name={garment.kind} />
        <p class="hint">{say('desk.no_photo')}</p>
      </div>
    )
  }
  return (
    <ul class="pictures">
      {garment.photos.map((marked, i) => (
        <li key={marked.photo.id} class={marked.marks.length > 0 ? 'marked' : undefined}>
          <a href={marked.photo.view}>
            <PhotoShown marked={marked} large={i === 0} />
          </a>
          {marked.side && <p class="hint">{marked.side}</p>}
          {marked.shows && (
            <p class="hint">
              {marked.shows.sentence}
              {marked.shows.otherwise && (
                <>
                  {' '}
                  <mark>{marked.shows.otherwise}</mark>
                </>
              )}
            </p>
          )}
          {marked.sheet && <SheetTold sheet={marked.sheet} />}
        </li>
      ))}
    </ul>
  )
}

const SheetTold = ({ sheet: { lines, open } }: { sheet: NonNullable<DeskPhoto['sheet']> }) => (
  <p class="hint">
    {lines.map((line) => `${line} `)}
    <a href={open.href}>{open.label}</a>
  </p>
)

/** What is marked on a photo is only seen where it is large. */
function PhotoShown({ marked, large }: { marked: MarkedPhoto; large: boolean }) {
  const { photo, marks } = marked
  if (marks.length > 0) return <MarkedPicture marked={marked} />
  return <img src={large ? photo.view : photo.thumb} alt={photo.alt} loading="lazy" />
}

function Flags({ garment }: { garment: DeskGarment }) {
  const say = useSay()
  const { flags, noted, label } = garment
  return (
    <div class="reasons">
      {flags.length === 0 && !label?.doubted && <p class="plain">{say('desk.no_flags')}</p>}
      <FlagList flags={flags} n={garment.n} />
      {noted.length > 0 && (
        <details class="noted">
          <summary>{say('desk.noted', { count: noted.length })}</summary>
          <FlagList flags={noted} n={garment.n} />
        </details>
      )}
    </div>
  )
}

function FlagList({ flags, n }: { flags: readonly StaffFlag[]; n: number }) {
  const say = useSay()
  if (flags.length === 0) return null
  return (
    <ul class="flags">
      {flags.map(({ severity, lead, message, because, why, decide }, i) => (
        <li key={message} class={`flag flag-${severity}`}>
          <strong>{lead}</strong> {message}
          <span class="because">
            {say('desk.why')} {because.join('; ')}
          </span>
          <Why about={message} lines={why} />
          {decide && <DecideFlag form={decide} about={message} id={`flag-${n}-${severity}-${i}`} />}
        </li>
      ))}
    </ul>
  )
}

function Facts({ garment }: { garment: DeskGarment }) {
  const say = useSay()
  const { press, facts, name } = garment
  return (
    <details class="facts">
      <summary>{say('desk.facts_title')}</summary>
      <FactTable caption={say('desk.press.title', { name })} lines={press} />
      <FactTable caption={say('desk.facts_of', { name })} lines={facts} />
      <p class="onward">
        <a href={garment.set.href}>{garment.set.label}</a>
      </p>
    </details>
  )
}

function FactTable({ caption, lines }: { caption: string; lines: readonly FactLine[] }) {
  const say = useSay()
  if (lines.length === 0) return null
  return (
    <table class="fact-table">
      <caption class="unseen">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{say('desk.columns.fact')}</th>
          <th scope="col">{say('desk.columns.value')}</th>
          <th scope="col">{say('desk.columns.from')}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ name, value, from, swatch }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>
              {swatch && <Swatch colours={swatch} />}
              {value}
            </td>
            <td>{from}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

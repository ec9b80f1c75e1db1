import { toSvg } from '../../papers/drawing.ts'
import type { SheetStep, TeardownSheet } from '../../papers/teardown-sheet.ts'
import { GradeMark, useSay } from '../chat/pieces.tsx'
import { MarkedPicture } from '../chat/spots.tsx'
import type { TeardownPage } from './view.ts'

/** How a garment is taken apart: one sheet of paper, also on the screen. */
export function TeardownView({ page }: { page: TeardownPage }) {
  const say = useSay()
  const { sheet, back, bench, record } = page
  return (
    <main id="main" class="teardown" tabIndex={-1}>
      <p class="onward">
        <a href={back.href}>{back.label}</a> <a href={bench.href}>{bench.label}</a>{' '}
        <a href={record.href}>{record.label}</a>
      </p>
      <article class="teardown-sheet">
        <Heading sheet={sheet} />
        {sheet.wait && <p class="bench-caution wait">{sheet.wait}</p>}
        <Flat sheet={sheet} />
        <Spots page={page} />
        <section aria-labelledby="teardown-steps">
          <h2 id="teardown-steps">{say('bench.steps')}</h2>
          <p class="pass-over">{say('bench.pass_over')}</p>
          <ol class="teardown-steps">
            {sheet.steps.map((step, i) => (
              <Step key={step.words} step={step} n={i + 1} />
            ))}
          </ol>
        </section>
        <Besides sheet={sheet} />
        <Initials />
      </article>
    </main>
  )
}

function Heading({ sheet }: { sheet: TeardownSheet }) {
  const say = useSay()
  return (
    <header class="teardown-head">
      <p class="big-tag">
        <span class="unseen">{say('bench.tag')} </span>
        {sheet.code}
      </p>
      <div>
        <h1>{sheet.name}</h1>
        <p class="sort">
          <GradeMark grade={sheet.grade} />
          <span>{sheet.sort}</span>
        </p>
      </div>
      <dl class="bench-plan" aria-label={say('bench.plan')}>
        {sheet.plan.map(({ name, words }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </header>
  )
}

function Flat({ sheet }: { sheet: TeardownSheet }) {
  const say = useSay()
  const { drawing, toDraw, legend } = sheet
  return (
    <figure class="laid-flat">
      {drawing && (
        <span
          class="picture"
          // toSvg makes it from our own marks and escapes every text.
          dangerouslySetInnerHTML={{
            __html: toSvg(drawing, { title: say('bench.flat'), description: legend }),
          }}
        />
      )}
      <figcaption>{legend}</figcaption>
      {toDraw && <div class="to-draw" />}
    </figure>
  )
}

/** What somebody marked on the garment's photos: to be looked for before the first cut. */
function Spots({ page: { marked, spots } }: { page: TeardownPage }) {
  const say = useSay()
  if (spots.length === 0) return null
  return (
    <section class="bench-spots" aria-labelledby="teardown-spots">
      <h2 id="teardown-spots">{say('bench.spots')}</h2>
      <p>{say('bench.spots_hint')}</p>
      <div class="bench-marked">
        {marked.map((one) => (
          <MarkedPicture key={one.photo.id} marked={one} />
        ))}
        <ul>
          {spots.map((spot) => (
            <li key={spot}>{spot}</li>
          ))}
        </ul>
      </div>
    </section>
  )
}

function Step({ step, n }: { step: SheetStep; n: number }) {
  const say = useSay()
  const { words, tools, keeps, cautions, again } = step
  const aside = [tools, keeps, again].filter(Boolean).join(' · ')
  return (
    <li class="bench-step">
      <span class="tick-box" aria-hidden="true" />
      <div>
        <p>
          <strong>{n}</strong> {words}
        </p>
        {aside && <p class="with">{aside}</p>}
        {cautions.length > 0 && (
          <p class="bench-caution">
            <strong>{say('bench.mind')}</strong> {cautions.join(' ')}
          </p>
        )}
      </div>
    </li>
  )
}

function Besides({ sheet }: { sheet: TeardownSheet }) {
  const say = useSay()
  if (sheet.notes.length === 0) return null
  return (
    <section class="besides" aria-labelledby="teardown-besides">
      <h2 id="teardown-besides">{say('bench.besides')}</h2>
      <p>{sheet.notes.join(' ')}</p>
    </section>
  )
}

function Initials() {
  const say = useSay()
  return (
    <dl class="initials">
      {(['notes', 'by', 'seen', 'day'] as const).map((name) => (
        <div key={name} class={`initials-${name}`}>
          <dt>{say(`bench.${name}`)}</dt>
          <dd />
        </div>
      ))}
    </dl>
  )
}

import type { CutSheet, PanelCuts } from '../../papers/cut-sheet.ts'
import { toSvg } from '../../papers/drawing.ts'
import { useSay } from '../chat/pieces.tsx'
import type { GarmentCuts, PlanCuts } from './view-plan.ts'

/** How garments are cut, each behind one line; paper shows what is open. */
export function Cuts({ cuts }: { cuts: PlanCuts }) {
  const say = useSay()
  const { at, before, after, toggle, more } = cuts
  return (
    <section class="plan-cuts" aria-labelledby="plan-cuts">
      <h2 id="plan-cuts">{say('desk.plan.cuts')}</h2>
      <p class="hint plan-to-print">
        <a href={toggle.href}>{toggle.label}</a>
        <span>{say('desk.plan.cuts_help')}</span>
      </p>
      {cuts.garments.map((garment) => (
        <Garment key={garment.n} garment={garment} open={cuts.open} />
      ))}
      {more && (
        <p class="plan-to-print">
          <span>{say('desk.plan.not_yet')}</span>
          <a href={more.href}>{more.label}</a>
        </p>
      )}
      {(before || after) && (
        <nav class="plan-pager" aria-label={say('desk.plan.pages')}>
          {before && (
            <a rel="prev" href={before}>
              {say('desk.plan.before')}
            </a>
          )}
          <span>{at}</span>
          {after && (
            <a rel="next" href={after}>
              {say('desk.plan.after')}
            </a>
          )}
        </nav>
      )}
    </section>
  )
}

/** The place a link leads to lies within, so that a browser opens what hides it. */
function Garment({ garment, open }: { garment: GarmentCuts; open: boolean }) {
  const { n, heading, minds, sheet, wait, teardown } = garment
  return (
    <details class="card plan-cut" open={open}>
      <summary>{heading}</summary>
      <div id={`cut-${n}`}>
        <p class="plan-teardown">
          <a href={teardown.href}>{teardown.label}</a>
        </p>
        {minds.length > 0 && (
          <ul class="caution plan-minds">
            {minds.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        )}
        {sheet ? <Sheet sheet={sheet} /> : <p>{wait}</p>}
      </div>
    </details>
  )
}

function Sheet({ sheet }: { sheet: CutSheet }) {
  return (
    <>
      <p class="bench-caution">
        {sheet.caution} {sheet.before}
      </p>
      <p class="plan-legend">{sheet.legend}</p>
      {sheet.panels.map((panel, i) => (
        <Panel key={`${i + 1}`} panel={panel} />
      ))}
      <Pieces pieces={sheet.pieces} />
    </>
  )
}

function Panel({ panel }: { panel: PanelCuts }) {
  const { heading, drawing, room, alt, list, notes } = panel
  return (
    <div class="plan-panel">
      <h3>{heading}</h3>
      {notes.map((words) => (
        <p key={words} class="plan-note">
          {words}
        </p>
      ))}
      <div class={`plan-drawn ${room}`}>
        <div
          class="picture"
          {...(room === 'page' && { tabIndex: 0, role: 'group', 'aria-label': heading })}
          // toSvg makes it from our own marks and escapes every text.
          dangerouslySetInnerHTML={{ __html: toSvg(drawing, alt) }}
        />
        {list.length > 0 && (
          <ol>
            {list.map(({ number, words }) => (
              <li key={number} value={number}>
                {words}
              </li>
            ))}
          </ol>
        )}
      </div>
    </div>
  )
}

function Pieces({ pieces }: { pieces: CutSheet['pieces'] }) {
  return (
    <ul class="plan-pieces">
      {pieces.map(({ words }) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  )
}

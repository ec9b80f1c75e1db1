import { OptionRow } from './answering.tsx'
import { Hidden, useSay } from './pieces.tsx'
import { around } from './sheet-around.ts'
import type { OutlineShown, SheetPage, SheetShown } from './view-sheet.ts'

/** A photo of the conversation to mark a sheet of paper on. */
export function SheetView({ page }: { page: SheetPage }) {
  const say = useSay()
  const { title, lead, shown, backHref } = page
  return (
    <main id="main" class="sheet sheet-page" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {title}
        </h1>
        <p class="help">{lead}</p>
        <SheetMarker shown={shown} />
        <p class="asides">
          <a class="aside-link" href={backHref}>
            {say('sheet.leave')}
          </a>
        </p>
      </section>
    </main>
  )
}

/** The photo, the four corners and the buttons. All of it is one form, whose fields hold the corners. */
export function SheetMarker({ shown }: { shown: SheetShown }) {
  const say = useSay()
  const { sheets, told, refused, standing, canTakeBack, postTo, hidden, wide, coarse } = shown
  return (
    <form method="post" action={postTo} class="sheet-form" data-sheet="" noValidate>
      <Hidden fields={{ ...hidden, wide: String(wide), coarse: coarse ? 'yes' : '' }} />
      {/* Enter presses a form's first button: in a number's field it shows where that corner lies. */}
      <button
        type="submit"
        name="act"
        value="show"
        class="unseen"
        tabIndex={-1}
        aria-hidden="true"
      />
      {refused && (
        <p class="errors" id="errors" role="alert" tabIndex={-1}>
          {refused}
        </p>
      )}
      <div class="sheet-columns">
        <div class="sheet-seen">
          <p class="sheet-told" id="sheet-told" role="status">
            {told}
          </p>
          <Stage shown={shown} />
          <p class="sheet-acts">
            <Act act="last" look="second" />
            <Act act="clear" look="quiet" />
            <Act act={shown.isLarge ? 'smaller' : 'larger'} look="quiet" />
          </p>
        </div>
        <div class="sheet-said">
          {standing && <p class="sheet-standing">{standing}</p>}
          <fieldset class="options">
            <legend>{say('sheet.which')}</legend>
            {sheets.map((option) => (
              <OptionRow
                key={option.value}
                option={option}
                type="radio"
                name="sheet"
                drawing={null}
              />
            ))}
          </fieldset>
          <Numbers corners={shown.corners} />
          <div class="go">
            <Act act="measure" look="main" />
            {canTakeBack && <Act act="take-back" look="second" />}
          </div>
        </div>
      </div>
    </form>
  )
}

const Act = ({ act, look }: { act: string; look: 'main' | 'second' | 'quiet' }) => {
  const say = useSay()
  return (
    <button type="submit" name="act" value={act} class={`button ${look}`} data-sheet-act={act}>
      {say(`sheet.${act}`)}
    </button>
  )
}

/**
 * Without a script the picture is a button that sends where it was tapped, as wide as it says, for the place
 * within it is told in pixels of the page. Keys have the numbers.
 */
function Stage({ shown }: { shown: SheetShown }) {
  const say = useSay()
  const { photo, width, height, outline, wide } = shown
  const tall = Math.round((wide * height) / width)
  return (
    <div
      class="sheet-scroll"
      {...(shown.isLarge && { tabIndex: 0, role: 'group', 'aria-label': say('sheet.scroll') })}
    >
      <div
        class="sheet-stage"
        data-width={width}
        data-height={height}
        data-corner={say('sheet.corner', { n: '{n}' })}
        data-told={say('sheet.told_at', { n: '{n}', x: '{x}', y: '{y}' })}
        data-glass={say('sheet.glass')}
        data-left={[0, 1, 2, 3, 4].map((left) => say('sheet.marked', { left })).join('|')}
      >
        <input
          type="image"
          name="at"
          src={photo.view}
          alt={photo.alt}
          width={wide}
          height={tall}
          tabIndex={-1}
        />
        <Outline outline={outline} tall={height / width} />
      </div>
    </div>
  )
}

/** Corners in shares as they are drawn over a picture: a line around them, clockwise, and a ring at each. */
export function Outline({ outline, tall }: { outline: OutlineShown; tall: number }) {
  const places = outline.map(([x, y], i) => ({
    n: i + 1,
    at: [round(1000 * x), round(1000 * tall * y)] as const,
  }))
  const line = around(places.map(({ at }) => at))
    .map((at) => at.join())
    .join(' ')
  return (
    <svg class="sheet-outline" viewBox={`0 0 1000 ${round(1000 * tall)}`} aria-hidden="true">
      <polygon class="seen-under" points={line} />
      <polygon class="seen-over" points={line} />
      {places.map(({ n, at: [x, y] }) => (
        <g key={n} transform={`translate(${x} ${y})`}>
          <circle class="seen-under" r="14" />
          <circle class="seen-over" r="14" />
        </g>
      ))}
    </svg>
  )
}

const round = (one: number): number => Math.round(one * 10) / 10

function Numbers({ corners }: { corners: SheetShown['corners'] }) {
  const say = useSay()
  const numbered = corners.map((place, i) => ({ n: i + 1, place }))
  return (
    <details class="sheet-numbers">
      <summary>{say('sheet.numbers')}</summary>
      <p class="hint">{say('sheet.numbers_hint')}</p>
      {numbered.map(({ n, place }) => (
        <fieldset key={n}>
          <legend>{say('sheet.corner', { n })}</legend>
          {(['x', 'y'] as const).map((name) => (
            <label key={name} for={`corner-${name}-${n}`}>
              <span>{say(`sheet.${name}`)}</span>
              <input
                type="number"
                id={`corner-${name}-${n}`}
                name={name}
                value={place[name]}
                min="0"
                max="100"
                step="any"
                inputMode="decimal"
              />
            </label>
          ))}
        </fieldset>
      ))}
      <p class="sheet-acts">
        <Act act="show" look="second" />
        <Act act="frame" look="second" />
      </p>
    </details>
  )
}

import { Hidden, useSay } from '../chat/pieces.tsx'
import type {
  ArrangeBoard,
  ArrangePage,
  ArrangePanel,
  ArrangeRow,
  ChosenPiece,
  PieceChoice,
  PinLine,
  ShownSwap,
  TouchButton,
} from './view-arrange.ts'
import { MarkWords } from './what-if.tsx'

/** Where a form goes, and the secret that it needs. */
interface Post {
  readonly postTo: string
  readonly csrf: string
}

/** A laid quilt whose pieces change places, on the screen and on paper. */
export function ArrangeView({ page }: { page: ArrangePage }) {
  const { back, others, refused, board, again } = page
  return (
    <main id="main" class="plan arrange" tabIndex={-1} data-quilts={page.state}>
      <p class="onward">
        {[back, ...others].map(({ label, href }) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </p>
      <div class="card pile">
        {refused && (
          <p class="errors" role="alert">
            {refused}
          </p>
        )}
        <h1 id="title">
          {page.title} <span class="quilt">{page.quilt}</span>
        </h1>
        {(page.words.length > 0 || again) && (
          <div class="plan-state">
            {page.words.map((words) => (
              <p key={words}>{words}</p>
            ))}
            {again && (
              <p>
                <a href={again.href}>{again.label}</a>
              </p>
            )}
          </div>
        )}
      </div>
      {board && <Board board={board} post={page} />}
    </main>
  )
}

function Board({ board, post }: { board: ArrangeBoard; post: Post }) {
  const say = useSay()
  // Wider than a phone: the keys that move a page move it too.
  const scrolled = { tabIndex: 0, role: 'group' as const, 'aria-label': say('quilt.desk_title') }
  return (
    <>
      <div class="arrange-board">
        <Panel panel={board.panel} post={post} />
        <section class="card quilt-numbered arrange-picture" aria-labelledby="arrange-picture">
          <h2 id="arrange-picture">{say('quilt.desk_title')}</h2>
          <div
            class="quilt-picture"
            {...scrolled}
            // quiltPicture makes it from our own shapes and escapes every text.
            dangerouslySetInnerHTML={{ __html: board.picture }}
          />
          {board.hints.map((words) => (
            <p key={words} class="hint">
              {words}
            </p>
          ))}
        </section>
      </div>
      <Fixed board={board} post={post} />
      <Rows rows={board.rows} />
    </>
  )
}

function Touch({ touch, post }: { touch: TouchButton; post: Post }) {
  return (
    <form method="post" action={post.postTo} class="act">
      <Hidden fields={{ csrf: post.csrf, ...touch.fields }} />
      <button type="submit" class={`button ${touch.look}`}>
        {touch.label}
        {touch.about && <span class="unseen"> {touch.about}</span>}
      </button>
    </form>
  )
}

function Panel({ panel, post }: { panel: ArrangePanel; post: Post }) {
  const { title, done, pieces, swap, hint, choice, startOver } = panel
  return (
    <section class="card arrange-panel" id="chosen" aria-labelledby="arrange-title">
      {done && (
        <div class="done" role="status">
          <p>{done.words}</p>
          {done.back && <Touch touch={done.back} post={post} />}
        </div>
      )}
      <h2 id="arrange-title">{title}</h2>
      {pieces.map((piece, n) => (
        <Chosen key={piece.label} piece={piece} nth={n} post={post} />
      ))}
      {swap && <Swap swap={swap} post={post} />}
      {hint && <p class="hint">{hint}</p>}
      {choice && <Choice choice={choice} />}
      {startOver && (
        <p class="arrange-over">
          <a href={startOver.href}>{startOver.label}</a>
        </p>
      )}
    </section>
  )
}

function Chosen({ piece, nth, post }: { piece: ChosenPiece; nth: number; post: Post }) {
  return (
    <div class={`arrange-chosen ${nth === 0 ? 'whole' : 'broken'}`}>
      <p>
        <strong>{piece.label}</strong>
        <span class="plan-size">{piece.kind}</span>
        {piece.pinned && (
          <span class="plan-size">
            <PinSign /> {piece.pinned}
          </span>
        )}
      </p>
      <Touch touch={piece.touch} post={post} />
    </div>
  )
}

function Swap({ swap, post }: { swap: ShownSwap; post: Post }) {
  return (
    <div class="arrange-swap">
      {swap.words.map((words) => (
        <p key={words}>{words}</p>
      ))}
      {swap.mark && (
        <p>
          <MarkWords mark={swap.mark} />
        </p>
      )}
      {swap.touch && <Touch touch={swap.touch} post={post} />}
    </div>
  )
}

function Choice({ choice }: { choice: PieceChoice }) {
  return (
    <form method="get" action={choice.action}>
      <Hidden fields={choice.hidden} />
      <p class="field">
        <label class="legend" for="arrange-piece">
          {choice.label}
        </label>
        <select id="arrange-piece" name={choice.name}>
          {choice.groups.map(({ label, options }) => (
            <optgroup key={label} label={label}>
              {options.map(({ value, label: words }) => (
                <option key={value} value={value}>
                  {words}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </p>
      <button type="submit" class="button second">
        {choice.send}
      </button>
    </form>
  )
}

/** Our sign for what stays where it is; words stand beside it. */
const PinSign = () => (
  <svg class="pin-sign" viewBox="0 0 10 10" aria-hidden="true" focusable="false">
    <path d="M3 3l6 6" stroke="currentColor" stroke-width="1.2" stroke-linecap="round" />
    <circle cx="3" cy="3" r="2.4" />
  </svg>
)

/** What is fixed of the quilt, by whom, and how it is let go. */
function Fixed({ board, post }: { board: ArrangeBoard; post: Post }) {
  const say = useSay()
  const { hold, pins, lost, elsewhere } = board
  if (!hold && !elsewhere) return null
  return (
    <section class="card arrange-fixed" aria-labelledby="arrange-fixed">
      <h2 id="arrange-fixed">{say('desk.arrange.fixed')}</h2>
      {hold?.words.map((words) => (
        <p key={words}>{words}</p>
      ))}
      {pins.length > 0 && (
        <>
          <h3>{say('desk.arrange.pins')}</h3>
          <Pins pins={pins} post={post} />
        </>
      )}
      {lost.length > 0 && (
        <div class="caution" role="note">
          <strong>{say('desk.arrange.lost.title', { count: lost.length })}</strong>
          <Pins pins={lost} post={post} />
        </div>
      )}
      {elsewhere && <p class="hint">{elsewhere}</p>}
      {hold && (
        <div class="acts">
          {hold.touches.map((touch) => (
            <Touch key={touch.label} touch={touch} post={post} />
          ))}
        </div>
      )}
    </section>
  )
}

function Pins({ pins, post }: { pins: readonly PinLine[]; post: Post }) {
  return (
    <ul class="arrange-pins">
      {pins.map(({ label, why, by, touch }) => (
        <li key={touch.fields.pin}>
          <span>
            {!why && <PinSign />} {label}
            {why && <span class="plan-size">{why}</span>}
            <span class="by plan-size">{by}</span>
          </span>
          <Touch touch={touch} post={post} />
        </li>
      ))}
    </ul>
  )
}

/** Every piece, for who reads the quilt as a list or sews it row by row. */
function Rows({ rows }: { rows: readonly ArrangeRow[] }) {
  const say = useSay()
  return (
    <section class="card arrange-rows" aria-labelledby="arrange-rows">
      <h2 id="arrange-rows">{say('desk.arrange.rows')}</h2>
      {rows.map(({ heading, pieces }) => (
        <div key={heading} class="arrange-row">
          <h3>{heading}</h3>
          <ul>
            {pieces.map(({ n, place, told, garment, name, href, pinned }) => (
              <li key={n}>
                <a href={href}>
                  <span class="arrange-place" aria-hidden="true">
                    {place}:
                  </span>
                  <span class="unseen">{told}:</span>{' '}
                  {garment !== null && <span class="tag-n">{garment}</span>} {name}
                </a>
                {pinned && (
                  <span class="arrange-pinned">
                    <PinSign /> {say('desk.arrange.is_pinned')}
                  </span>
                )}
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  )
}

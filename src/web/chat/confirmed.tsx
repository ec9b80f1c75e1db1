import { EstimateSection } from './estimate.tsx'
import { TalkSection } from './messages.tsx'
import { Cautions, GradeMark, Picture, useSay } from './pieces.tsx'
import { PostingSection } from './posting-form.tsx'
import { QuiltSection } from './quilt.tsx'
import { StatusFoot, StatusTop } from './status.tsx'
import type { ConfirmedPage, Packed } from './view.ts'

/** The finished pile: where it stands, what to pack and how, what waits, what stays, what it is likely to cost. */
export function ConfirmedView({ page }: { page: ConfirmedPage }) {
  const say = useSay()
  const { status } = page
  // Whoever has posted the box, or took the pile back, has nothing to pack.
  const packs = !status || status.stage === 'looking' || status.stage === 'packing'
  // Once a price is agreed, or the pile withdrawn, an estimate would only confuse; it stays on the paper.
  const isSettled = status !== null && (status.money !== null || status.stage === 'withdrawn')
  // A question of ours stands on top, what was written below what is asked for now, a way to write at the end.
  const threads = page.talk?.threads ?? []
  const asks = threads.some((thread) => thread.asks)
  const written = threads.length > 0
  return (
    <main id="main" class="sheet" tabIndex={-1} data-pile="confirmed">
      {asks && <TalkSection talk={page.talk} />}
      {status && <StatusTop status={status} />}
      {written && !asks && <TalkSection talk={page.talk} />}
      <Head page={page} packs={packs} />
      {page.quilts && <QuiltSection quilts={page.quilts} />}
      <PackedList
        id="pack"
        title={say(packs ? 'confirmed.pack' : 'confirmed.listed')}
        packed={page.packed}
        tick={packs}
      />
      <PackedList
        id="wait"
        title={say('confirmed.waiting')}
        help={say('confirmed.waitingHelp')}
        packed={page.waiting}
      />
      <KeptHome page={page} />
      {packs && <BoxSection page={page} />}
      {page.posting && <PostingSection posting={page.posting} />}
      {page.estimate && !isSettled && <EstimateSection estimate={page.estimate} />}
      {!written && <TalkSection talk={page.talk} />}
      {status && <StatusFoot status={status} />}
      <section class="card keep" aria-labelledby="keep-title">
        <h2 id="keep-title">{say('confirmed.keep')}</h2>
        <p>{say('save.help')}</p>
        <p class="keep-link">
          <a href={page.keepLink}>{page.keepLink}</a>
        </p>
      </section>
    </main>
  )
}

/** What the confirmed pile is called by where it stands. */
export const confirmedTitle = ({ status }: Pick<ConfirmedPage, 'status'>): string =>
  status ? `status.headline.${status.stage}` : 'confirmed.title'

function Head({ page, packs }: { page: ConfirmedPage; packs: boolean }) {
  const say = useSay()
  const looking = page.status?.stage === 'looking'
  return (
    <section class="card" aria-labelledby="title">
      <p class="item">{say('confirmed.pile', { pile: page.pile, on: page.confirmedOn })}</p>
      <h1 id="title" tabIndex={-1}>
        {say(confirmedTitle(page))}
      </h1>
      {looking && <p class="help">{say('confirmed.looking')}</p>}
      {looking && page.ahead.length > 0 && <Steps steps={page.ahead} />}
      {packs && !looking && (
        <p class="help">{say('confirmed.help', { count: page.packed.length })}</p>
      )}
      {page.papers.length > 0 && (
        <p class="papers">
          {page.papers.map(({ label, href }) => (
            <a key={href} class="button second" href={href}>
              {label}
            </a>
          ))}
        </p>
      )}
    </section>
  )
}

const Steps = ({ steps }: { steps: readonly string[] }) => (
  <ol class="steps">
    {steps.map((step) => (
      <li key={step}>{step}</li>
    ))}
  </ol>
)

function PackedList({
  id,
  title,
  help,
  packed,
  tick = false,
}: {
  id: string
  title: string
  help?: string
  packed: readonly Packed[]
  tick?: boolean
}) {
  if (packed.length === 0) return null
  return (
    <section class="card" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{title}</h2>
      {help && <p>{help}</p>}
      <ul class="checklist">
        {packed.map((garment) => (
          <PackedGarment key={garment.n} garment={garment} tick={tick} />
        ))}
      </ul>
    </section>
  )
}

function PackedGarment({ garment, tick }: { garment: Packed; tick: boolean }) {
  const say = useSay()
  return (
    <li data-garment={garment.n} data-grade={garment.grade}>
      {tick && <span class="tick" />}
      {garment.photo ? (
        <img src={garment.photo.thumb} alt={garment.photo.alt} width={64} height={64} />
      ) : (
        garment.kind && <Picture name={garment.kind} />
      )}
      <div class="packed-words">
        <p class="packed-name">
          <span class="tag-n">{garment.n}</span> {garment.name}
        </p>
        <p class="packed-code">
          {say('thread.code', { code: garment.code })} <GradeMark grade={garment.grade} />
        </p>
        {garment.steps.length > 0 && (
          <ul class="small-steps">
            {garment.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ul>
        )}
      </div>
    </li>
  )
}

function KeptHome({ page }: { page: ConfirmedPage }) {
  const say = useSay()
  if (page.keptHome.length === 0) return null
  return (
    <section class="card" aria-labelledby="home-title">
      <h2 id="home-title">{say('confirmed.home')}</h2>
      <p>{say('confirmed.homeHelp')}</p>
      <ul class="kept">
        {page.keptHome.map(({ n, name, reason, next }) => (
          <li key={n} data-garment={n} data-grade="home">
            <p class="packed-name">
              <span class="tag-n">{n}</span> {name}
            </p>
            <p>
              {reason} {next}
            </p>
          </li>
        ))}
      </ul>
    </section>
  )
}

function BoxSection({ page }: { page: ConfirmedPage }) {
  const say = useSay()
  return (
    <section class="card" aria-labelledby="box-title">
      <h2 id="box-title">{say('confirmed.box')}</h2>
      <Picture name="pack-box" told />
      <Steps steps={page.packing} />
      <Cautions texts={page.cautions} />
      {page.address.length > 0 && (
        <>
          <h3>{say('confirmed.address')}</h3>
          <address>
            {page.address.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </address>
        </>
      )}
    </section>
  )
}

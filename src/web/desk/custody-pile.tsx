import { Cautions, Hidden, useSay } from '../chat/pieces.tsx'
import { Located } from './custody-home.tsx'
import { Choices, PlaceField, Places, Refused, TextField } from './custody-pieces.tsx'
import type { CustodyPilePage } from './view-custody.ts'

/** Everything of one pile: its parcels, garments and bags; and the quilt's sign-off. */
export function CustodyPileView({ page }: { page: CustodyPilePage }) {
  const say = useSay()
  return (
    <main id="main" class="list custody" tabIndex={-1}>
      <nav class="onward" aria-label={page.title}>
        {page.links.map(({ label, href }) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </nav>
      <h1>{page.title}</h1>
      <Refused sentence={page.refused} />
      <ParcelsSection page={page} />
      <section class="card" aria-labelledby="garments">
        <h2 id="garments">{say('custody.pile.garments')}</h2>
        {page.garments.length > 0 ? (
          <Located lines={page.garments} />
        ) : (
          <p class="hint">{say('custody.pile.none')}</p>
        )}
      </section>
      {page.others.length > 0 && (
        <section class="card" aria-labelledby="others">
          <h2 id="others">{say('custody.pile.others')}</h2>
          <Located lines={page.others} />
        </section>
      )}
      {page.signOff && <SignOffSection page={page} signOff={page.signOff} />}
      <Places places={page.form.places} />
    </main>
  )
}

function ParcelsSection({ page }: { page: CustodyPilePage }) {
  const say = useSay()
  return (
    <section class="card" aria-labelledby="parcels">
      <h2 id="parcels">{say('custody.pile.parcels')}</h2>
      {page.parcels.length === 0 && <p class="hint">{say('custody.pile.none')}</p>}
      <ul class="located">
        {page.parcels.map(({ code, href, state, facts, check }) => (
          <li key={href}>
            <a href={href}>
              <span class="located-code">{code}</span>
              <span class="located-at">{state}</span>
              <span class="hint">{facts.join(' · ')}</span>
            </a>
            {check && (
              <a class={check.first ? 'button main' : 'button second'} href={check.href}>
                {check.label}
              </a>
            )}
          </li>
        ))}
      </ul>
      <AtTheDoor page={page} />
      <Announce page={page} />
      <form method="post" action={page.form.postTo} class="move">
        <Hidden fields={{ csrf: page.form.csrf, idem: `${page.form.idem}-out`, act: 'pack' }} />
        <details class="move">
          <summary>{say('custody.pile.pack')}</summary>
          <Sender page={page} of="pack" />
          <PlaceField id="pack-place" label={say('custody.field.place')} required />
          <p>
            <button type="submit" class="button main">
              {say('custody.pile.pack')}
            </button>
          </p>
        </details>
      </form>
    </section>
  )
}

function Sender({ page, of }: { page: CustodyPilePage; of: string }) {
  const say = useSay()
  const { typed } = page
  return (
    <div class="fields">
      <TextField
        id={`${of}-carrier`}
        name="carrier"
        label={say('custody.pile.carrier')}
        value={typed.carrier ?? ''}
      />
      <TextField
        id={`${of}-tracking`}
        name="tracking"
        label={say('custody.pile.tracking')}
        value={typed.tracking ?? ''}
      />
      <TextField
        id={`${of}-insured`}
        name="insured"
        type="number"
        label={say('custody.pile.insured_for')}
        value={typed.insured ?? ''}
      />
    </div>
  )
}

function AtTheDoor({ page }: { page: CustodyPilePage }) {
  const say = useSay()
  const { form, conditions, typed } = page
  return (
    <details class="move" open={typed.act === 'door'}>
      <summary>{say('custody.pile.at_door')}</summary>
      <form method="post" action={form.postTo}>
        <Hidden fields={{ csrf: form.csrf, idem: `${form.idem}-door`, act: 'door' }} />
        <p class="hint">{say('custody.pile.at_door_help')}</p>
        <Cautions texts={page.cautions} />
        <Choices
          id="door"
          name="condition"
          legend={say('custody.field.condition')}
          type="checkbox"
          options={conditions}
          chosen={(typed.condition ?? '').split(',')}
        />
        <PlaceField
          id="door-place"
          label={say('custody.field.place')}
          value={typed.place ?? ''}
          required
        />
        <Sender page={page} of="door" />
        <button type="submit" class="button main">
          {say('custody.pile.save_door')}
        </button>
      </form>
    </details>
  )
}

function Announce({ page }: { page: CustodyPilePage }) {
  const say = useSay()
  const { form, typed } = page
  return (
    <details class="move" open={typed.act === 'announce'}>
      <summary>{say('custody.pile.announce')}</summary>
      <form method="post" action={form.postTo}>
        <Hidden fields={{ csrf: form.csrf, idem: `${form.idem}-tell`, act: 'announce' }} />
        <Sender page={page} of="tell" />
        <div class="fields">
          <TextField
            id="tell-posted"
            name="posted"
            type="date"
            label={say('custody.pile.posted_on')}
            value={typed.posted ?? ''}
          />
          <TextField
            id="tell-expected"
            name="expected"
            type="date"
            label={say('custody.pile.expected_on')}
            value={typed.expected ?? ''}
          />
        </div>
        <button type="submit" class="button main">
          {say('custody.pile.save_parcel')}
        </button>
      </form>
    </details>
  )
}

function SignOffSection({
  page,
  signOff,
}: {
  page: CustodyPilePage
  signOff: NonNullable<CustodyPilePage['signOff']>
}) {
  const say = useSay()
  const { csrf } = page.form
  return (
    <section class="card" aria-labelledby="sign-off">
      <h2 id="sign-off">{say('custody.pile.sign_off')}</h2>
      <p class="hint">{signOff.told}</p>
      {signOff.signed ? (
        <form method="post" action={signOff.postTo}>
          <Hidden fields={{ csrf, act: 'undo' }} />
          <p class="now-at">{signOff.signed}</p>
          <button type="submit" class="button second">
            {say('custody.pile.undo_sign_off')}
          </button>
        </form>
      ) : (
        <form method="post" action={signOff.postTo}>
          <Hidden fields={{ csrf, act: 'sign' }} />
          <p>{say('custody.pile.sign_off_help')}</p>
          <Choices
            id="leftovers"
            name="leftovers"
            legend={say('custody.pile.leftovers')}
            type="radio"
            options={signOff.choices}
            chosen={[signOff.chosen]}
          />
          <button type="submit" class="button main">
            {say('custody.pile.sign_off')}
          </button>
        </form>
      )}
    </section>
  )
}

import { OptionRow } from '../chat/answering.tsx'
import { Hidden, useSay } from '../chat/pieces.tsx'
import { SpotPart, SpotPhotos } from '../chat/spots.tsx'
import type { DeskSpotsShown, SpotsPage } from './view-spots.ts'

/** Photos of one garment to mark holes, stains and thin places on. */
export function SpotsView({ page }: { page: SpotsPage }) {
  const say = useSay()
  const { title, lead, back, csrf, postTo, refused, against, photos, options, spots } = page
  return (
    <main id="main" class="spots-page" tabIndex={-1}>
      <p class="onward">
        <a href={back.href}>{back.label}</a>
      </p>
      <h1>{title}</h1>
      <p class="help">{lead}</p>
      {refused && (
        <p class="errors" role="alert">
          {refused}
        </p>
      )}
      <div class="spots-table">
        <form method="post" action={postTo} class="card spots">
          <Hidden fields={{ csrf, act: 'mark' }} />
          <fieldset class="options options-short">
            <legend>{say('spots.what')}</legend>
            {options.map((option) => (
              <OptionRow
                key={option.value}
                option={option}
                type="radio"
                name="what"
                drawing={null}
              />
            ))}
          </fieldset>
          <SpotPhotos photos={photos} columns={12} />
        </form>
        <section class="card" aria-labelledby="marked">
          <h2 id="marked">{say('spots.marked', { count: spots.length })}</h2>
          {against.map((sentence) => (
            <p key={sentence} class="flag flag-care">
              {sentence}
            </p>
          ))}
          {spots.length > 0 && <p class="hint">{say('desk.spots.sides')}</p>}
          <ol class="spot-list">
            {spots.map((spot) => (
              <li key={spot.value}>
                <strong>{spot.words}</strong> <span class="hint">{spot.by}</span>
                <form method="post" action={postTo}>
                  <Hidden fields={{ csrf, spot: spot.value }} />
                  <SpotPart spot={spot} />
                  <p class="spot-acts">
                    {spot.parts.length > 1 && (
                      <button type="submit" name="act" value="part" class="button second">
                        {say('desk.spots.save')}
                        <span class="unseen"> {spot.words}</span>
                      </button>
                    )}
                    <button type="submit" name="act" value="unmark" class="button quiet">
                      {say('spots.remove')}
                      <span class="unseen"> {spot.words}</span>
                    </button>
                  </p>
                </form>
              </li>
            ))}
          </ol>
        </section>
      </div>
    </main>
  )
}

/** What is marked, on a garment's card, and the way to mark more. */
export function SpotsTold({ spots }: { spots: DeskSpotsShown }) {
  const { lines, against, open } = spots
  return (
    <>
      {lines.length > 0 && (
        <ul class="spots-told">
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {against.map((sentence) => (
        <p key={sentence} class="flag flag-care">
          {sentence}
        </p>
      ))}
      {open && (
        <p class="onward">
          <a href={open.href}>{open.label}</a>
        </p>
      )}
    </>
  )
}

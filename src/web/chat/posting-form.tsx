import { Hidden, useSay } from './pieces.tsx'
import type { Posting } from './view-posting.ts'

/** The customer says that a box is on its way. */
export function PostingSection({ posting }: { posting: Posting }) {
  const say = useSay()
  const { postTo, idem, told, carrier, tracking, refusal } = posting
  return (
    <section class="card" aria-labelledby="posting-title" id="posting">
      <h2 id="posting-title">{say('custody.post.title')}</h2>
      <p>{say('custody.post.help')}</p>
      {told.length > 0 && (
        <ul class="small-steps">
          {told.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      <form method="post" action={postTo}>
        <Hidden fields={{ idem }} />
        {refusal && (
          <p class="error" role="alert" id="posting-refusal">
            {refusal}
          </p>
        )}
        <div class="field">
          <label class="legend" for="field-carrier">
            {say('custody.post.carrier')}
          </label>
          <input
            type="text"
            id="field-carrier"
            name="carrier"
            value={carrier}
            aria-describedby={refusal ? 'posting-refusal' : undefined}
            required
          />
        </div>
        <div class="field">
          <label class="legend" for="field-tracking">
            {say('custody.post.tracking')}
          </label>
          <input
            type="text"
            id="field-tracking"
            name="tracking"
            value={tracking}
            aria-describedby={refusal ? 'posting-refusal' : undefined}
          />
        </div>
        <p>
          <button type="submit" class="button second">
            {say('custody.post.send')}
          </button>
        </p>
      </form>
    </section>
  )
}

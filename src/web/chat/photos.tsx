import { photoFiles } from '../limits.ts'
import { describedBy, errorOf, FieldRefusal, useSay } from './pieces.tsx'
import type { Answering, Photo, Question } from './view.ts'
import type { AttachedPhoto } from './view-question.ts'

export function PhotoFields({
  question,
  answering,
}: {
  question: Question
  answering: Extract<Answering, { kind: 'photo' }>
}) {
  const say = useSay()
  const refused = errorOf(question.errors, 'photo')
  const { attached, most, advice } = answering
  return (
    <div class="field">
      {attached.length > 0 && (
        <>
          <p class="legend">{say('photo.attached', { count: attached.length })}</p>
          <Attached photos={attached} postTo={question.postTo} />
          {attached.length > 1 && <p class="hint">{say('photo.order')}</p>}
        </>
      )}
      {advice.length > 0 && <input type="hidden" name="anyway" value="yes" />}
      <label class="legend" for="field-photo">
        {say(attached.length > 0 ? 'photo.more' : 'photo.choose')}
      </label>
      <FieldRefusal field="photo" sentence={refused} />
      <input
        id="field-photo"
        type="file"
        name="photo"
        multiple={most > 1}
        accept={photoFiles}
        aria-describedby={describedBy('photo-hint', refused && 'error-photo')}
        aria-invalid={refused ? true : undefined}
      />
      <p class="hint" id="photo-hint">
        {say('photo.hint', { most })}
      </p>
    </div>
  )
}

/** What to do better with another photo. */
export function Advice({ advice }: { advice: readonly string[] }) {
  const say = useSay()
  return (
    <div class="seen-advice" role="status">
      <strong>{say('look.again')}</strong>
      <ul>
        {advice.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p>{say('look.anyway')}</p>
    </div>
  )
}

/** Photos that are there already, in their order: each says what it shows, moves, or goes. */
function Attached({ photos, postTo }: { photos: readonly AttachedPhoto[]; postTo: string }) {
  const say = useSay()
  return (
    <ol class="photos photos-held" id="photos-held">
      {photos.map((photo, i) => (
        <li key={photo.id}>
          <input type="hidden" name="order" value={photo.id} />
          <a href={photo.view}>
            <img src={photo.thumb} alt={photo.alt} width={96} height={96} />
          </a>
          <div class="photo-side">
            <label for={`shows-${photo.id}`}>
              {say('photo.shows')}
              <span class="unseen"> {photo.alt}</span>
            </label>
            <select id={`shows-${photo.id}`} name="shows">
              {photo.sides.map(({ value, label }) => (
                <option key={value} value={value} selected={value === photo.shows}>
                  {label}
                </option>
              ))}
            </select>
          </div>
          <div class="photo-acts">
            {i > 0 && <Move photo={photo} way="up" postTo={postTo} />}
            {i < photos.length - 1 && <Move photo={photo} way="down" postTo={postTo} />}
            <div class="option">
              <input
                type="checkbox"
                id={`remove-${photo.id}`}
                name="remove"
                value={photo.id}
                checked={photo.goes}
              />
              <label for={`remove-${photo.id}`}>{say('photo.remove')}</label>
            </div>
          </div>
        </li>
      ))}
    </ol>
  )
}

function Move({ photo, way, postTo }: { photo: Photo; way: 'up' | 'down'; postTo: string }) {
  const say = useSay()
  return (
    <button
      type="submit"
      name={way}
      value={photo.id}
      class="button second"
      formaction={`${postTo}#photos-held`}
    >
      {say(`photo.${way}`)}
      <span class="unseen"> {photo.alt}</span>
    </button>
  )
}

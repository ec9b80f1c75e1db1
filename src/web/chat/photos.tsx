import { photoFiles } from '../limits.ts'
import { describedBy, errorOf, FieldRefusal, useSay } from './pieces.tsx'
import type { Answering, Photo, Question } from './view.ts'

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
          <Attached photos={attached} />
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

/** Photos that are there already, each with a way to take it away again. */
function Attached({ photos }: { photos: readonly Photo[] }) {
  const say = useSay()
  return (
    <ul class="photos">
      {photos.map(({ id, thumb, view, alt }) => (
        <li key={id}>
          <a href={view}>
            <img src={thumb} alt={alt} width={96} height={96} />
          </a>
          <div class="option">
            <input type="checkbox" id={`remove-${id}`} name="remove" value={id} />
            <label for={`remove-${id}`}>{say('photo.remove')}</label>
          </div>
        </li>
      ))}
    </ul>
  )
}

import { photoFiles } from '../limits.ts'
import { describedBy, errorOf, FieldRefusal, Picture, useSay } from './pieces.tsx'
import type { Photo, Question } from './view.ts'
import type { LabelPhotoShown, LabelRead } from './view-question.ts'

/** The photo of a label, the button that has it read, and what was read. */
export function LabelPhotoField({
  question,
  photo,
}: {
  question: Question
  photo: LabelPhotoShown
}) {
  const say = useSay()
  const refused = errorOf(question.errors, 'photo')
  const { taken, read } = photo
  return (
    <div
      class="field label-photo"
      id="label-photo"
      data-reading={say('label.photo.reading')}
      data-failed={say('failures.label_unread')}
    >
      <label class="legend" for="field-photo">
        {say(taken ? 'label.photo.another' : 'label.photo.choose')}
      </label>
      <p class="hint" id="photo-hint">
        {say('label.photo.hint')}
      </p>
      <FieldRefusal field="photo" sentence={refused} />
      {read?.verdict !== 'sure' && <Picture name="photograph-the-label" told />}
      <input
        id="field-photo"
        type="file"
        name="photo"
        accept={photoFiles}
        aria-describedby={describedBy('photo-hint', refused && 'error-photo')}
        aria-invalid={refused ? true : undefined}
      />
      <button
        type="submit"
        name="act"
        value="read-label"
        class="button second"
        formaction={`${question.postTo}#label-read`}
      >
        {say('label.photo.read')}
      </button>
      <p class="reading" id="label-reading" hidden />
      {taken && (
        <div class="label-taken">
          <Taken photo={taken} />
          {read && <WhatWasRead read={read} />}
        </div>
      )}
    </div>
  )
}

/** Large enough to hold it against the words. */
function Taken({ photo: { id, view, alt } }: { photo: Photo }) {
  const say = useSay()
  return (
    <div class="label-picture">
      <a href={view}>
        <img src={view} alt={alt} />
      </a>
      <div class="option">
        <input type="checkbox" id={`remove-${id}`} name="remove" value={id} />
        <label for={`remove-${id}`}>{say('photo.remove')}</label>
      </div>
    </div>
  )
}

function WhatWasRead({ read }: { read: LabelRead }) {
  const say = useSay()
  const { verdict, summary, doubted, advice } = read
  return (
    <div class={`label-read read-${verdict}`} id="label-read" tabIndex={-1} data-verdict={verdict}>
      {verdict !== 'sure' && <strong>{say(`label.photo.${verdict}`)}</strong>}
      {summary && <p>{verdict === 'sure' ? `${summary} ${say('label.photo.sure')}` : summary}</p>}
      {verdict === 'sure' && (
        <>
          <button type="submit" name="act" value="answer" class="button main">
            {say('label.photo.yes')}
          </button>
          <p class="hint">{say('label.photo.change')}</p>
        </>
      )}
      {doubted.length > 0 && (
        <>
          <p>{say('label.photo.doubted')}</p>
          <p class="label-lines">{doubted.join('\n')}</p>
        </>
      )}
      {advice.length > 0 && (
        <ul>
          {advice.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </div>
  )
}

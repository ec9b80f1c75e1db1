import { useSay } from '../chat/pieces.tsx'
import type { DeskGarment } from './view.ts'

/** The label's photo, the words as they were read, and what the customer made of them. */
export function LabelSeen({ garment: { n, label } }: { garment: DeskGarment }) {
  const say = useSay()
  if (!label) return null
  const { photo, verdict, doubted, words } = label
  return (
    <section class="label-seen" aria-labelledby={`label-${n}`}>
      {photo && (
        <a href={photo.view}>
          <img src={photo.thumb} alt={photo.alt} width={96} height={96} loading="lazy" />
        </a>
      )}
      <div class="label-words">
        <h4 id={`label-${n}`}>{say('desk.label.title')}</h4>
        {doubted ? (
          <p class="flag flag-care">
            <strong>{say('desk.label.check')}.</strong> {verdict}
          </p>
        ) : (
          <p>{verdict}</p>
        )}
        <div class="label-pair">
          {words.map(({ heading, lines }) => (
            <div key={heading}>
              <p class="hint">{heading}</p>
              <p class="label-lines">
                {lines.map(({ text, differs }, at) => [
                  at > 0 && '\n',
                  differs ? <mark>{text}</mark> : text,
                ])}
              </p>
            </div>
          ))}
        </div>
      </div>
    </section>
  )
}

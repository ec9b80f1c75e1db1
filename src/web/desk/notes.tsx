import { Hidden, useSay } from '../chat/pieces.tsx'
import type { DeskNote } from './view.ts'

/** What the customer left to a person, each with its way to be seen to. */
export function Notes({ notes, csrf }: { notes: readonly DeskNote[]; csrf: string }) {
  const say = useSay()
  if (notes.length === 0) return null
  return (
    <ul class="notes">
      {notes.map((note) => (
        <li
          key={note.id}
          id={`note-${note.id}`}
          class={note.settled ? 'note note-settled' : 'note'}
        >
          <p class="note-about">
            <strong>{note.about}</strong> <span class="by">{note.at}</span>
          </p>
          <p class="typed">{note.text}</p>
          {note.settled ? (
            <p class="by">{note.settled}</p>
          ) : (
            <form method="post" action={note.settleAt}>
              <Hidden fields={{ csrf }} />
              <button type="submit" class="button second">
                {say('desk.notes.settle')}
                <span class="unseen"> {note.about}</span>
              </button>
            </form>
          )}
        </li>
      ))}
    </ul>
  )
}

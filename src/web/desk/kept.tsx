import { Hidden, useSay } from '../chat/pieces.tsx'
import { PhotosToErase } from '../chat/yours.tsx'
import type { KeptPage } from './view-kept.ts'

/** What is kept of a pile's customer: its photos, all of it as a file, and the end of it. */
export function KeptView({ page }: { page: KeptPage }) {
  const say = useSay()
  return (
    <main id="main" class="list kept" tabIndex={-1}>
      <nav class="onward" aria-label={say('desk.kept.links')}>
        {page.links.map(({ label, href }) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </nav>
      <h1>{page.title}</h1>
      {page.refused && (
        <p class="refusal" id="refusal" role="alert">
          {page.refused}
        </p>
      )}
      <section class="card">
        <h2>{say('desk.kept.file')}</h2>
        <p>{say('desk.kept.file_what')}</p>
        <a class="button second" href={page.fileHref} download="">
          {say('yours.file.get')}
        </a>
      </section>
      <section class="card" id="photos">
        <h2>{say('desk.kept.photos')}</h2>
        {page.photos.length === 0 ? (
          <p>{say('desk.kept.no_photos')}</p>
        ) : (
          <>
            <p>{say('desk.kept.photos_what')}</p>
            <PhotosToErase photos={page.photos} hidden={page.hidden} />
          </>
        )}
      </section>
      <section class="card" id="erase">
        <h2>{say('desk.kept.erase')}</h2>
        {page.erase ? <EraseForm erase={page.erase} hidden={page.hidden} /> : <p>{page.why}</p>}
      </section>
    </main>
  )
}

function EraseForm({
  erase,
  hidden,
}: {
  erase: NonNullable<KeptPage['erase']>
  hidden: KeptPage['hidden']
}) {
  const say = useSay()
  return (
    <form method="post" action={erase.postTo}>
      <Hidden fields={hidden} />
      {erase.minds && <p>{erase.minds}</p>}
      <p>{say('desk.kept.erase_what')}</p>
      <div class="option">
        <input id="field-sure" type="checkbox" name="sure" value="yes" />
        <label for="field-sure">{say('desk.kept.sure')}</label>
      </div>
      <div class="acts">
        <button type="submit" class="button second" data-act="erase-pile">
          {say('desk.kept.send')}
        </button>
      </div>
    </form>
  )
}

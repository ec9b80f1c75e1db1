import { FieldRefusal, Hidden, useSay } from './pieces.tsx'
import type { ErasedPage, YourPhoto, YoursPage } from './view-yours.ts'

/** What is kept of a customer, and the form that erases it. */
export function YoursView({ page }: { page: YoursPage }) {
  const say = useSay()
  return (
    <main id="main" class="sheet" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say('yours.title')}
        </h1>
        <p class="help">{say('yours.what')}</p>
        <h2>{say('yours.how_long')}</h2>
        <dl class="answers">
          {page.kept.map(({ what, days }) => (
            <div key={what}>
              <dt>{what}</dt>
              <dd>
                <span>{days}</span>
              </dd>
            </div>
          ))}
        </dl>
        <p class="hint">{say('yours.log')}</p>
      </section>
      <section class="card" aria-labelledby="file-title">
        <h2 id="file-title">{say('yours.file.title')}</h2>
        <p>{say('yours.file.what')}</p>
        <p>
          <a class="button second" href={page.fileHref} download="">
            {say('yours.file.get')}
          </a>
        </p>
      </section>
      <section class="card" id="photos" aria-labelledby="photos-title">
        <h2 id="photos-title">{say('yours.photos.title')}</h2>
        {page.photos.length === 0 ? (
          <p>{say('yours.photos.none')}</p>
        ) : (
          <>
            <p>{say('yours.photos.what')}</p>
            <PhotosToErase photos={page.photos} hidden={page.photoHidden} />
          </>
        )}
      </section>
      <section class="card" aria-labelledby="erase-title">
        <h2 id="erase-title">{say('yours.erase_title')}</h2>
        {page.erase ? <EraseForm erase={page.erase} /> : <p>{page.why}</p>}
        <p class="asides">
          {!page.erase && (
            <a class="aside-link" href={page.askHref}>
              {say('yours.ask')}
            </a>
          )}
          <a class="aside-link" href={page.backHref}>
            {say('yours.back')}
          </a>
        </p>
      </section>
    </main>
  )
}

/** Photos, each with a button behind a second tap that erases it, for it cannot come back; `hidden` goes with every one. */
export function PhotosToErase({
  photos,
  hidden,
}: {
  photos: readonly YourPhoto[]
  hidden: Readonly<Record<string, string>>
}) {
  const say = useSay()
  return (
    <ul class="photos-kept">
      {photos.map(({ id, thumb, view, alt, eraseTo }) => (
        <li key={id}>
          <a href={view}>
            <img src={thumb} alt={alt} loading="lazy" />
          </a>
          <details>
            <summary>
              {say('yours.photos.erase')}
              <span class="unseen"> {alt}</span>
            </summary>
            <form method="post" action={eraseTo}>
              <Hidden fields={hidden} />
              <button type="submit" class="button second" data-act="erase-photo">
                {say('yours.photos.sure')}
                <span class="unseen"> {alt}</span>
              </button>
            </form>
          </details>
        </li>
      ))}
    </ul>
  )
}

function EraseForm({ erase }: { erase: NonNullable<YoursPage['erase']> }) {
  const say = useSay()
  return (
    <form method="post" action={erase.postTo} noValidate>
      <Hidden fields={erase.hidden} />
      <p>{say('yours.erase')}</p>
      <FieldRefusal field="sure" sentence={erase.refusal} />
      <div class="option">
        <input
          id="field-sure"
          type="checkbox"
          name="sure"
          value="yes"
          aria-describedby={erase.refusal ? 'error-sure' : undefined}
          aria-invalid={erase.refusal ? true : undefined}
        />
        <label for="field-sure">{say('yours.sure')}</label>
      </div>
      <div class="acts">
        <button type="submit" class="button second" data-act="erase-pile">
          {say('yours.send')}
        </button>
      </div>
    </form>
  )
}

/** Said once, after all of it is gone. */
export function ErasedView({ page }: { page: ErasedPage }) {
  const say = useSay()
  return (
    <main id="main" class="sheet" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say('erased.title')}
        </h1>
        <p class="help">{say('erased.what')}</p>
        <p>{page.backups}</p>
        <div class="acts">
          <a class="button second" href={page.startHref}>
            {say('erased.start')}
          </a>
        </div>
      </section>
    </main>
  )
}

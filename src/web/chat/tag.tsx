import { ActButton, GradeMark, Picture, useSay } from './pieces.tsx'
import { Swatch } from './swatch.tsx'
import type { Flag, Photo, Said, Tag } from './view.ts'

/** So many tags lie open on a phone before the older ones fold into one line. */
const shownOpen = 2

/**
 * Garments on their thread, the newest last. With `fold` all but the newest go behind one line when
 * there are many, so that what follows begins on the first screen.
 */
export function Thread({ tags, fold }: { tags: readonly Tag[]; fold: boolean }) {
  if (tags.length === 0) return null
  if (!fold || tags.length <= shownOpen) return <Tags tags={tags} />
  const older = tags.slice(0, -1)
  return (
    <div class="thread-folded">
      <details class="fold" data-opens-wide>
        <summary>
          <Folded tags={older} />
        </summary>
        <Tags tags={older} />
      </details>
      <Tags tags={tags.slice(-1)} />
    </div>
  )
}

function Folded({ tags }: { tags: readonly Tag[] }) {
  const say = useSay()
  const good = tags.filter((tag) => tag.grade === 'sound' && !tag.dropped).length
  return <>{say('thread.folded', { garments: tags.length, good })}</>
}

const Tags = ({ tags }: { tags: readonly Tag[] }) => (
  <ol class="thread">
    {tags.map((tag) => (
      <OneTag key={tag.n} tag={tag} />
    ))}
  </ol>
)

function OneTag({ tag }: { tag: Tag }) {
  const say = useSay()
  return (
    <li
      class={`tag${tag.dropped ? ' tag-dropped' : ''}`}
      data-garment={tag.n}
      {...(tag.grade && { 'data-grade': tag.grade })}
    >
      <details>
        <summary>
          <span class="hole" />
          <span class="tag-name">
            <span class="tag-n">{tag.n}</span> {tag.name}
            {tag.swatch && <Swatch {...tag.swatch} />}
          </span>
          <Standing tag={tag} />
          <span class="unseen">{say('thread.more')}</span>
        </summary>
        <TagBody tag={tag} />
      </details>
      {tag.goOnHref && !tag.dropped && (
        <a class="go-on" href={tag.goOnHref}>
          {say('thread.goOn')}
          <span class="unseen"> {tag.name}</span>
        </a>
      )}
    </li>
  )
}

function Standing({ tag }: { tag: Tag }) {
  const say = useSay()
  if (tag.dropped) return <span class="grade grade-none">{say('thread.dropped')}</span>
  if (tag.grade) return <GradeMark grade={tag.grade} />
  return <span class="grade grade-none">{say('thread.open')}</span>
}

function TagBody({ tag }: { tag: Tag }) {
  const say = useSay()
  const sort = [tag.kindWords, tag.code && say('thread.code', { code: tag.code })].filter(Boolean)
  return (
    <div class="tag-body">
      {(tag.kind || sort.length > 0) && (
        <p class="tag-sort">
          {tag.kind && <Picture name={tag.kind} />} {sort.join(' · ')}
        </p>
      )}
      <Verdict tag={tag} />
      <Photos photos={tag.photos} />
      <Answers answers={tag.answers} about={tag.name} />
      {tag.actions.length > 0 && (
        <div class="tag-acts">
          {tag.actions.map((action) => (
            <ActButton key={action.act} action={action} about={tag.name} />
          ))}
        </div>
      )}
    </div>
  )
}

/** Why it is graded so, what follows, what could better it, and each further reason. */
function Verdict({ tag }: { tag: Tag }) {
  return (
    <>
      {tag.sentence && <p class="tag-why">{tag.sentence}</p>}
      {tag.next && <p class="tag-next">{tag.next}</p>}
      <BetterSteps tag={tag} />
      {tag.flags.length > 0 && (
        <ul class="flags">
          {tag.flags.map((flag) => (
            <OneFlag key={flag.message} flag={flag} />
          ))}
        </ul>
      )}
    </>
  )
}

function OneFlag({ flag }: { flag: Flag }) {
  const say = useSay()
  return (
    <li class={`flag flag-${flag.severity}`}>
      <strong>{say(`severity.${flag.severity}`)}</strong> {flag.message}
      {flag.next && <span class="flag-next"> {flag.next}</span>}
    </li>
  )
}

/** What the customer can do so that it does better, each with the answer to change. */
function BetterSteps({ tag }: { tag: Tag }) {
  const say = useSay()
  if (tag.better.length === 0) return null
  return (
    <div class="better">
      <p class="better-title" id={`better-${tag.n}`}>
        {say('better.title')}
      </p>
      <ol class="better-steps" aria-labelledby={`better-${tag.n}`}>
        {tag.better.map(({ act, text, link }) => (
          <li key={act} class="better-step" data-better={act}>
            {text}{' '}
            {link && (
              <a class="better-link" href={link.href}>
                {say('better.go', { question: link.label })}
                <span class="unseen">, {tag.name}</span>
              </a>
            )}
          </li>
        ))}
      </ol>
      {tag.together && <p>{tag.together}</p>}
    </div>
  )
}

export function Photos({ photos }: { photos: readonly Photo[] }) {
  if (photos.length === 0) return null
  return (
    <ul class="photos">
      {photos.map((photo) => (
        <li key={photo.id}>
          <a href={photo.view}>
            <img src={photo.thumb} alt={photo.alt} width={96} height={96} loading="lazy" />
          </a>
        </li>
      ))}
    </ul>
  )
}

/** What was said, each line with its way to change it. */
export function Answers({ answers, about }: { answers: readonly Said[]; about: string | null }) {
  const say = useSay()
  if (answers.length === 0) return null
  return (
    <dl class="answers">
      {answers.map(({ question, asked, said, href }) => (
        <div key={question}>
          <dt>{asked}</dt>
          <dd>
            <span>{said}</span>
            {href && (
              <a href={href}>
                {say('page.change')}
                <span class="unseen">
                  {' '}
                  {asked}
                  {about && `, ${about}`}
                </span>
              </a>
            )}
          </dd>
        </div>
      ))}
    </dl>
  )
}

import { useSay } from './pieces.tsx'
import type { ShownCloth, ShownQuilt, ShownQuilts } from './view-quilt.ts'

const unsettled = ({ unsettled }: ShownQuilts) => unsettled && { 'data-unsettled': '' }

/** The picture of each quilt, and what is in it. */
export function QuiltSection({ quilts }: { quilts: ShownQuilts }) {
  return (
    <section
      class="card quilts"
      id="quilts"
      aria-labelledby="quilt-title"
      data-quilts={quilts.state}
      {...unsettled(quilts)}
    >
      <h2 id="quilt-title">{quilts.title}</h2>
      <QuiltsBody quilts={quilts} />
    </section>
  )
}

/** The same with a number on each piece, for the bench. */
export function QuiltForBench({ quilts }: { quilts: ShownQuilts }) {
  return (
    <section
      class="card quilts quilt-numbered"
      aria-labelledby="quilt-title"
      data-quilts={quilts.state}
    >
      <h2 id="quilt-title">{quilts.title}</h2>
      <QuiltsBody quilts={quilts} wide />
    </section>
  )
}

/** The same behind one line, where a page is for something else. Opens by itself where there is room. */
export function QuiltFold({ quilts }: { quilts: ShownQuilts }) {
  return (
    <details
      class="said quilts quilts-small"
      id="quilts"
      data-opens-wide
      data-quilts={quilts.state}
      {...unsettled(quilts)}
    >
      <summary>
        <h2>{quilts.title}</h2>
      </summary>
      <QuiltsBody quilts={quilts} />
    </details>
  )
}

/** `wide`: pictures are as large as they must be to be read, and may be moved. */
function QuiltsBody({ quilts, wide = false }: { quilts: ShownQuilts; wide?: boolean }) {
  const { words, again, untold } = quilts
  return (
    <>
      {quilts.quilts.map((quilt) => (
        <Quilt key={quilt.save.href} quilt={quilt} wide={wide} name={quilts.title} />
      ))}
      {untold && (
        <div class="untold">
          <p>{untold.words}</p>
          {untold.links.length > 0 && (
            <ul class="tell">
              {untold.links.map(({ label, href }) => (
                <li key={href}>
                  <a href={href}>{label}</a>
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
      {words.map((sentence) => (
        <p key={sentence} class="hint">
          {sentence}
        </p>
      ))}
      {again && (
        <p class="quilt-again">
          <a href={again.href}>{again.label}</a>
        </p>
      )}
    </>
  )
}

function Quilt({ quilt, wide, name }: { quilt: ShownQuilt; wide: boolean; name: string }) {
  const say = useSay()
  const { heading, picture, save, arrange, cloths } = quilt
  return (
    <div class="quilt-drawn">
      {heading && <h3>{heading}</h3>}
      <div class="quilt-shown">
        <figure>
          <div
            class="quilt-picture"
            {...(wide && { tabIndex: 0, role: 'group', 'aria-label': heading ?? name })}
            // quiltPicture makes it from our own shapes and escapes every text.
            dangerouslySetInnerHTML={{ __html: picture }}
          />
          <figcaption class="quilt-save">
            <a href={save.href} download>
              {save.label}
            </a>
            {arrange && <a href={arrange.href}>{arrange.label}</a>}
          </figcaption>
        </figure>
        <div class="quilt-in">
          <h3>{say('quilt.in_it')}</h3>
          <ul>
            {cloths.map((cloth, i) => (
              <Cloth key={`${i + 1}`} cloth={cloth} />
            ))}
          </ul>
        </div>
      </div>
    </div>
  )
}

function Cloth({ cloth }: { cloth: ShownCloth }) {
  const { n, name, pieces } = cloth
  return (
    <li {...(n !== null && { 'data-cloth': n })}>
      <ClothSwatch cloth={cloth} />
      <span>
        {n !== null && (
          <>
            <span class="tag-n">{n}</span>{' '}
          </>
        )}
        {name}
      </span>
      <span class="quilt-count">{pieces}</span>
    </li>
  )
}

/** What stands beside it in words is not told again. */
function ClothSwatch({ cloth: { n, colour, second, mark, photo, untold } }: { cloth: ShownCloth }) {
  return (
    <svg class="cloth" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      <rect width="20" height="20" fill={colour} />
      {second && <rect x="10" width="10" height="20" fill={second} />}
      {photo && <image width="20" height="20" href={photo} />}
      {untold && <path d="M6 10l4 -4 4 4 -4 4z" fill="none" stroke={mark} stroke-width="1.5" />}
      {n === null && (
        <rect
          x="3.5"
          y="3.5"
          width="13"
          height="13"
          fill="none"
          stroke={mark}
          stroke-dasharray="2.5 2"
        />
      )}
    </svg>
  )
}

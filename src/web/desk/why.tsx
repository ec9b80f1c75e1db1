import { useSay } from '../chat/pieces.tsx'
import type { WhyPart, WhySource } from './view-why.ts'

/** Why something is as it is: rule, what was found, row and source. Closed until it is asked for. */
export function Why({ about, lines }: Pick<WhyPart, 'about' | 'lines'>) {
  const say = useSay()
  if (lines.length === 0) return null
  return (
    <details class="why">
      <summary>
        {say('desk.whys.ask')}
        <span class="unseen"> {about}</span>
      </summary>
      <ul>
        {lines.map(({ rule, found, sources }) => (
          <li key={`${rule} ${found.join()}`}>
            <p>{rule}</p>
            {found.length > 0 && (
              <p class="why-found">
                {say('desk.whys.found')} {found.join('; ')}
              </p>
            )}
            {sources.map((source) => (
              <Source key={source.row} {...source} />
            ))}
          </li>
        ))}
      </ul>
    </details>
  )
}

/** The words of a source stand in the shop's files, in the language they were written in. */
function Source({ kind, words, row }: WhySource) {
  return (
    <p class="why-source">
      <strong>{kind}</strong>
      {words && <span lang="en">{words}</span>}
      <code>{row}</code>
    </p>
  )
}

/** What was reckoned of a garment beside its flags, each with its why. */
export function Reckoned({ parts }: { parts: readonly WhyPart[] }) {
  const say = useSay()
  if (parts.length === 0) return null
  return (
    <details class="reckoned">
      <summary>{say('desk.whys.title')}</summary>
      <ul>
        {parts.map(({ about, value, lines }) => (
          <li key={about}>
            <p>
              <strong>{about}</strong> {value}
            </p>
            <Why about={about} lines={lines} />
          </li>
        ))}
      </ul>
    </details>
  )
}

import type { LabelReading } from '../textile/reading.ts'
import type { Say } from '../words/words.ts'

/** What was read from a label, as a sentence: "Cotton 60 %, polyester 40 %. Iron cool." */
export function labelWords(reading: LabelReading, say: Say): string {
  const blocks = reading.blocks.map((block) => {
    const shares = block.fibres
      .map(({ fibre, percent }) =>
        percent === null
          ? say(`fibres.${fibre}`)
          : say('reading.share', { fibre: say(`fibres.${fibre}`), percent }),
      )
      .join(', ')
    return block.section ? `${say(`reading.sections.${block.section}`)}: ${shares}` : shares
  })
  const cloth = blocks.length > 0 ? blocks.join('; ') : say('reading.no_fibres')
  const iron = say(`reading.iron.${reading.iron.level ?? 'silent'}`)
  return say('reading.read', { cloth, iron })
}

import type { CutLine } from '../../src/papers/cut-sheet.ts'

type Rect = readonly [x1: number, y1: number, x2: number, y2: number]

/** "12 1/2" in quarter inches. */
function quarters(length: string): number {
  const found = /^(?:(\d+))?\s?(?:(1\/4|1\/2|3\/4))?$/.exec(length)
  if (!found) throw new Error(`no length: ${length}`)
  const parts: Readonly<Record<string, number>> = { '1/4': 1, '1/2': 2, '3/4': 3 }
  return Number(found[1] ?? 0) * 4 + (parts[found[2] ?? ''] ?? 0)
}

/**
 * Cuts a panel of W by H as a maker would who reads the English lines and sees no drawing: what the
 * lines say to be pieces, with the sizes they say. Throws where a line cannot be followed.
 */
export function followed(W: number, H: number, lines: readonly CutLine[]): string[] {
  const parts = new Map<string, Rect>([['the whole panel', [0, 0, W, H]]])
  const pieces: string[] = []
  let last = { way: '', length: 0 }
  for (const { number, words } of lines) {
    const plain = words.replaceAll('\u00a0', ' ')
    const full =
      /^(Across|Down) at ([\d /]+) in from the (?:top|left) of (the whole panel|the part (?:above|below|left of|right of) cut \d+)\./.exec(
        plain,
      )
    const again = /^Again at ([\d /]+) in, (below|right of) cut (\d+)\./.exec(plain)
    if (!full && !again) throw new Error(`cannot be followed: ${plain}`)
    const way = full ? full[1]! : last.way
    const length = quarters(full ? full[2]! : again![1]!)
    const name = full ? full[3]! : `the part ${again![2]} cut ${again![3]}`
    const rect = parts.get(name)
    if (!rect) throw new Error(`${name} is not there: ${plain}`)
    parts.delete(name)
    const [x1, y1, x2, y2] = rect
    const at = (way === 'Down' ? x1 : y1) + length
    const two: readonly [string, string, Rect][] =
      way === 'Down'
        ? [
            ['Left', 'left of', [x1, y1, at, y2]],
            ['Right', 'right of', [at, y1, x2, y2]],
          ]
        : [
            ['Above', 'above', [x1, y1, x2, at]],
            ['Below', 'below', [x1, at, x2, y2]],
          ]
    for (const [side, of, [a, b, c, d]] of two) {
      if (c <= a || d <= b) throw new Error(`no cloth on one side: ${plain}`)
      const said = new RegExp(`${side}: (?:the block, )?([\\d /]+) × ([\\d /]+) in\\.`).exec(plain)
      if (said) {
        const [w, h] = [quarters(said[1]!), quarters(said[2]!)]
        if (c - a !== w || d - b !== h) throw new Error(`${c - a} by ${d - b} lies there: ${plain}`)
        pieces.push([a, b, w, h].join())
      } else if (!plain.includes(`${side}: left over.`)) {
        parts.set(`the part ${of} cut ${number}`, [a, b, c, d])
      }
    }
    last = { way, length }
  }
  if (lines.length > 0 && parts.size > 0) {
    throw new Error(`nothing is said of ${[...parts.keys()].join(', ')}`)
  }
  return pieces.sort()
}

import { breakLines } from './draw-text.ts'
import type { Flow } from './grammar.ts'
import { type Entry, type Outline, outline, type Wording } from './outline.ts'

const line = 16
const pad = 10
const gap = 26
const box = { x: 40, width: 440 }
const labels = { x: box.x + box.width + 14, width: 250 }
const lanes = { x: labels.x + labels.width, apart: 12 }
// Characters of the widest usual letters that fit a box of that width at 12 px.
const boxChars = 66
const colours = ['#8a3b12', '#1d5c6b', '#5b4a8a', '#4c6b1d', '#8a1d4c', '#1d3f8a', '#6b5a1d']

interface Placed extends Entry {
  readonly y: number
  readonly height: number
  readonly lines: readonly string[]
}

interface Jump {
  readonly from: number
  readonly row: number
  readonly to: number
  readonly label: string
}

/** The flow from top to bottom; an edge that passes questions by runs in a lane of its own. */
export function drawSvg(flow: Flow, say?: Wording): string {
  let y = 60
  let right = lanes.x
  const drawn = outline(flow, say).map((part) => {
    const placed = place(part, y + 34)
    const last = placed.at(-1)!
    const end = last.y + last.height + gap
    const jumps = jumpsOf(placed)
    const lane = laneOf(jumps)
    right = Math.max(right, lanes.x + (Math.max(-1, ...lane) + 2) * lanes.apart)
    const svg = [
      heading(part, y),
      ...placed.map((entry, at) => drawEntry(entry, placed[at + 1]?.y ?? end)),
      ...jumps.map((jump, at) => drawJump(jump, lane[at]!, placed, end)),
      `<text class="end" x="${box.x + 8}" y="${end + 12}">end of ${xml(part.id)}</text>`,
    ].join('\n')
    y = end + 46
    return svg
  })
  return `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="title desc" viewBox="0 0 ${right + 20} ${y}" width="${right + 20}" height="${y}">
<title id="title">The flow ${xml(flow.flow)}</title>
<desc id="desc">${xml(describe(flow))}</desc>
<style>text{font:12px system-ui,sans-serif;fill:#22201c}.id{font-weight:700}.part{font-size:18px;font-weight:700}.note,.end{fill:#6b645a}.way{font-size:11px}.box{fill:#fbf8f1;stroke:#22201c}.optional{stroke-dasharray:5 3}.line{fill:none;stroke:#22201c}.lane{fill:none;stroke-width:1.5}</style>
<rect width="100%" height="100%" fill="#fffdf8"/>
<text class="part" x="${box.x}" y="34">${xml(flow.flow)}</text>
${drawn.join('\n')}
</svg>
`
}

const describe = ({ parts }: Flow): string =>
  parts.map(({ id, questions }) => `${id}: ${questions.length} questions`).join('; ')

function heading({ id, repeated }: Outline, y: number): string {
  const note = repeated ? ` (${repeated})` : ''
  return `<text class="part" x="${box.x}" y="${y + 18}">${xml(id + note)}</text>`
}

function place({ entries }: Outline, top: number): Placed[] {
  let y = top
  return entries.map((entry) => {
    const lines = linesOf(entry)
    const rows = Math.max(lines.length, entry.ways.length)
    const placed = { ...entry, y, lines, height: rows * line + 2 * pad }
    y += placed.height + gap
    return placed
  })
}

function linesOf(entry: Entry): string[] {
  const marks = [entry.kind, entry.optional && 'optional', entry.bounds].filter(Boolean).join(', ')
  return [
    `${entry.id}: ${marks}`,
    ...(entry.when ? breakLines(`only while ${entry.when}`, boxChars) : []),
    ...(entry.ask ? breakLines(entry.ask, boxChars) : []),
    ...breakLines(entry.options.join(' | '), boxChars),
    ...breakLines(`read by: ${entry.readBy.join(', ')}`, boxChars),
  ]
}

function drawEntry(entry: Placed, nextY: number): string {
  const { x, width } = box
  const bottom = entry.y + entry.height
  const shape = entry.optional ? 'box optional' : 'box'
  const lines = entry.lines.map((text, at) => {
    const y = entry.y + pad + 12 + at * line
    return `<text class="${at === 0 ? 'id' : 'note'}" x="${x + pad}" y="${y}">${xml(text)}</text>`
  })
  return [
    `<rect class="${shape}" x="${x}" y="${entry.y}" width="${width}" height="${entry.height}" rx="6"/>`,
    ...lines,
    ...(goesOn(entry) || entry.when ? [arrowDown(x + 24, bottom, nextY)] : []),
    ...(entry.when ? [passBy(entry, nextY)] : []),
  ].join('\n')
}

const goesOn = ({ ways }: Entry): boolean => ways.length === 1 && ways[0]!.guard === ''

function arrowDown(x: number, from: number, to: number): string {
  const tip = to - 2
  return `<path class="line" d="M${x} ${from}V${tip}m-4 -6l4 6l4 -6"/>`
}

/** Left of a question that is asked only while a rule holds: the way around it. */
function passBy({ y, height }: Placed, nextY: number): string {
  const { x } = box
  const bottom = Math.max(y + height + 8, nextY - 10)
  return `<path class="line optional" d="M${x + 24} ${y - 10}H${x - 14}V${bottom}H${x + 24}"/>`
}

/** Every edge that is not the plain way to the next question. Past the last place is the end. */
function jumpsOf(placed: readonly Placed[]): Jump[] {
  return placed.flatMap((entry, from) => {
    const isPlain = goesOn(entry) && targetOf(placed, entry.ways[0]!.to) === from + 1
    if (isPlain) return []
    return entry.ways.map(({ guard, to }, row) => ({
      from,
      row,
      to: targetOf(placed, to),
      label: guard === '' ? to : `${guard}: ${to}`,
    }))
  })
}

function targetOf(placed: readonly Placed[], id: string): number {
  const at = placed.findIndex((entry) => entry.id === id)
  return at < 0 ? placed.length : at
}

/** A lane for each jump, so that no two in one lane overlap. */
function laneOf(jumps: readonly Jump[]): number[] {
  const ends: number[] = []
  return jumps.map(({ from, to }) => {
    const free = ends.findIndex((end) => end <= from)
    const lane = free < 0 ? ends.length : free
    ends[lane] = Math.max(from, to) + 0.5
    return lane
  })
}

function drawJump(jump: Jump, lane: number, placed: readonly Placed[], end: number): string {
  const colour = colours[lane % colours.length]!
  const source = placed[jump.from]!
  const y = source.y + pad + 14 + jump.row * line
  const target = placed[jump.to]
  const into = (target?.y ?? end) + 2 + (lane % 4) * 2
  const x = lanes.x + (lane + 1) * lanes.apart
  const left = target ? box.x + box.width : box.x + 100
  const [text = ''] = breakLines(jump.label, 60)
  return [
    `<text class="way" x="${labels.x}" y="${y - 3}">${xml(text)}</text>`,
    `<path class="lane" stroke="${colour}" d="M${box.x + box.width} ${y}H${x}V${into}H${left + 2}m7 -4l-7 4l7 4"/>`,
  ].join('\n')
}

const xml = (text: string): string =>
  text
    .replace(/(?![\n\t])\p{Cc}|\p{Cs}|[\ufffe\uffff]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')

import type { Flow } from './grammar.ts'
import { type Entry, outline, type Wording } from './outline.ts'

export function drawText(flow: Flow, say?: Wording): string {
  const parts = outline(flow, say).map(({ id, repeated, entries }) => {
    const title = repeated ? `${id} (${repeated})` : id
    return [title, '='.repeat(title.length), ...entries.flatMap(linesOf)].join('\n')
  })
  return `${[flow.flow, ...parts].join('\n\n')}\n`
}

function linesOf(entry: Entry): string[] {
  const marks = [
    entry.kind,
    entry.optional && 'optional',
    entry.bounds,
    entry.when && `only while ${entry.when}`,
  ]
  const ways = entry.ways.map(({ guard, to }) => `    ${guard ? `${guard} -> ` : '-> '}${to}`)
  return [
    `  ${entry.id}: ${marks.filter(Boolean).join(', ')}`,
    ...(entry.ask ? [`    "${entry.ask}"`] : []),
    ...(entry.options.length > 0 ? wrap(`of: ${entry.options.join(' | ')}`, 92, '      ') : []),
    `    read by: ${entry.readBy.join(', ')}`,
    ...ways,
  ]
}

/** Breaks a line at blanks; the first is indented by four, the others by `indent`. */
function wrap(text: string, width: number, indent: string): string[] {
  return breakLines(text, width).map((line, at) => (at === 0 ? `    ${line}` : indent + line))
}

/** Text in lines of at most `width` characters; a longer word is cut. */
export function breakLines(text: string, width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/[ \n\t]+/u).flatMap((one) => cut(one, width))) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line)
      line = word
    } else {
      line = line === '' ? word : `${line} ${word}`
    }
  }
  return line === '' ? lines : [...lines, line]
}

const cut = (word: string, width: number): string[] =>
  word.match(new RegExp(`.{1,${width}}`, 'gsu')) ?? []

import { type Document, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml'
import type { Finding, Path, Where } from './finding.ts'

export interface Source extends Where {
  /** Plain data, or undefined where the text is no YAML at all. */
  readonly value: unknown
  readonly findings: readonly Finding[]
}

/** YAML text as plain data that remembers its lines. Errors become findings; nothing is thrown. */
export function parseSource(text: string, file: string): Source {
  const lines = new LineCounter()
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false })
  const lineAt = (offset: number): number => Math.max(1, lines.linePos(offset).line)
  const findings: Finding[] = [...document.errors, ...document.warnings].map((problem) => ({
    file,
    line: lineAt(problem.pos[0]),
    rule: 'yaml',
    message: problem.message,
  }))
  return {
    file,
    value: plain(document, (message) => findings.push({ file, line: 1, rule: 'yaml', message })),
    findings,
    lineOf: (path) => lineAt(offsetOf(document.contents, path)),
  }
}

// A few bytes of aliases can stand for gigabytes; the library counts them and throws.
function plain(document: Document, report: (message: string) => void): unknown {
  if (document.errors.length > 0) return undefined
  try {
    return document.toJS({ maxAliasCount: 100 })
  } catch (error) {
    report(error instanceof Error ? error.message : String(error))
    return undefined
  }
}

/** Where a path begins in the text; where it leads nowhere, its nearest part that exists. */
function offsetOf(contents: unknown, path: Path): number {
  let node = contents as Node | null
  let offset = node?.range?.[0] ?? 0
  for (const step of path) {
    const next = child(node, step)
    if (!next) return offset
    offset = next.offset
    node = next.node
  }
  return offset
}

function child(node: Node | null, step: string | number) {
  if (isMap(node)) {
    const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === String(step))
    if (!pair) return null
    return { node: pair.value as Node | null, offset: (pair.key as Node).range?.[0] ?? 0 }
  }
  if (!isSeq(node)) return null
  const item = node.items[Number(step)] as Node | null | undefined
  return item ? { node: item, offset: item.range?.[0] ?? 0 } : null
}

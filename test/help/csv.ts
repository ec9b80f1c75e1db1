import { readFileSync } from 'node:fs'

const field = /(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g

const cells = (line: string): string[] =>
  [...line.matchAll(field)].map(([, quoted, bare]) => quoted?.replaceAll('""', '"') ?? bare ?? '')

/** The rows of a small comma-separated file, by the names of its first line. */
export function readCsv(path: URL): Record<string, string>[] {
  const [head, ...lines] = readFileSync(path, 'utf8').trimEnd().split('\n')
  const names = cells(head!)
  return lines.map((line) => Object.fromEntries(cells(line).map((cell, at) => [names[at]!, cell])))
}

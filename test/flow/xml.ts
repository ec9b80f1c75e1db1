const tag =
  /^<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<&]*(?:&(?:amp|lt|gt|quot);[^"<&]*)*")*)\s*(\/?)>/
const content = /^(?:[^<&]|&(?:amp|lt|gt|quot);)+/
// Characters that XML 1.0, section 2.2, does not allow.
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const forbidden = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/u

/** What keeps a text without comments and CDATA from being well-formed XML; null where nothing does. */
export function xmlProblem(text: string): string | null {
  if (forbidden.test(text)) return 'a character XML does not allow'
  const open: string[] = []
  let rest = text.trim()
  let roots = 0
  while (rest !== '') {
    const [words] = content.exec(rest) ?? []
    if (words) {
      if (open.length === 0 && words.trim() !== '') return `text outside: ${words.slice(0, 40)}`
      rest = rest.slice(words.length)
      continue
    }
    const found = tag.exec(rest)
    if (!found) return `no tag: ${rest.slice(0, 40)}`
    const [all, closing, name, , empty] = found
    if (open.length === 0) roots += 1
    if (closing && open.pop() !== name) return `${all} closes nothing`
    if (!closing && !empty) open.push(name!)
    rest = rest.slice(all.length)
  }
  return open.length > 0 ? `${open.at(-1)} stays open` : roots === 1 ? null : 'not one root'
}

/** Sets a text on lines of at most so many letters; a word that is longer is parted with a hyphen. */
export function wrap(text: string, most: number, parts: 'long-words' | 'any-words'): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    let rest = word
    for (;;) {
      const room = most - (line === '' ? 0 : line.length + 1)
      if (rest.length <= room) {
        line = line === '' ? rest : `${line} ${rest}`
        break
      }
      const at = mayPart(rest, room, parts === 'any-words' || rest.length > most)
      if (at > 0) {
        const begun = rest.slice(0, at) + (rest[at - 1] === '/' ? '' : '-')
        line = line === '' ? begun : `${line} ${begun}`
        rest = rest.slice(at)
      } else if (line === '') {
        line = rest
        break
      }
      lines.push(line)
      line = ''
    }
  }
  return line === '' ? lines : [...lines, line]
}

const least = 3

/** Behind a slash, else between two letters far enough from both ends; 0: nowhere. */
function mayPart(word: string, room: number, hyphen: boolean): number {
  const slash = word.lastIndexOf('/', room - 1) + 1
  if (slash > 0 && slash < word.length) return slash
  if (!hyphen || !/^\p{L}{6,}[,.]?$/u.test(word)) return 0
  const at = Math.min(room - 1, word.length - least)
  return at >= least ? at : 0
}

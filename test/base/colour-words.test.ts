import { expect, test } from 'vitest'
import { labOf } from '../../src/base/colour.ts'
import { colourWord, colourWords, drawnAs, examplesOf } from '../../src/base/colour-words.ts'
import { readPageWords } from '../../src/words/words.ts'

// Named colours of CSS: W3C, CSS Color Module Level 4, section 6.1 "Named Colors". Where a name holds one of
// our words, or is the plain name of a dark or light one, ours must be the same.
test.each([
  ['black', '#000000', 'black'],
  ['dimgray', '#696969', 'grey'],
  ['gray', '#808080', 'grey'],
  ['darkgray', '#a9a9a9', 'grey'],
  ['silver', '#c0c0c0', 'grey'],
  ['slategray', '#708090', 'grey'],
  ['white', '#ffffff', 'white'],
  ['snow', '#fffafa', 'white'],
  ['beige', '#f5f5dc', 'cream'],
  ['linen', '#faf0e6', 'cream'],
  ['antiquewhite', '#faebd7', 'cream'],
  ['saddlebrown', '#8b4513', 'brown'],
  ['sienna', '#a0522d', 'brown'],
  ['tan', '#d2b48c', 'brown'],
  ['red', '#ff0000', 'red'],
  ['darkred', '#8b0000', 'red'],
  ['firebrick', '#b22222', 'red'],
  ['crimson', '#dc143c', 'red'],
  ['pink', '#ffc0cb', 'pink'],
  ['hotpink', '#ff69b4', 'pink'],
  ['deeppink', '#ff1493', 'pink'],
  ['orange', '#ffa500', 'orange'],
  ['darkorange', '#ff8c00', 'orange'],
  ['yellow', '#ffff00', 'yellow'],
  ['gold', '#ffd700', 'yellow'],
  ['green', '#008000', 'green'],
  ['darkgreen', '#006400', 'green'],
  ['lightgreen', '#90ee90', 'green'],
  ['seagreen', '#2e8b57', 'green'],
  ['olive', '#808000', 'green'],
  ['blue', '#0000ff', 'blue'],
  ['navy', '#000080', 'blue'],
  ['midnightblue', '#191970', 'blue'],
  ['royalblue', '#4169e1', 'blue'],
  ['steelblue', '#4682b4', 'blue'],
  ['skyblue', '#87ceeb', 'blue'],
  ['lightblue', '#add8e6', 'blue'],
  ['purple', '#800080', 'purple'],
  ['rebeccapurple', '#663399', 'purple'],
  ['mediumpurple', '#9370db', 'purple'],
  ['plum', '#dda0dd', 'purple'],
])('%s (%s) is %s', (_, hex, word) => {
  expect(colourWord(labOf(hex))).toBe(word)
})

test('every colour there is has a word, and every word stands in both languages', () => {
  const found = new Set<string>()
  for (let r = 0; r < 256; r += 15) {
    for (let g = 0; g < 256; g += 15) {
      for (let b = 0; b < 256; b += 15) {
        const hex = `#${[r, g, b].map((n) => n.toString(16).padStart(2, '0')).join('')}`
        found.add(colourWord(labOf(hex)))
      }
    }
  }
  expect([...found].sort()).toEqual([...colourWords].sort())
  for (const sentences of readPageWords().values()) {
    for (const word of colourWords) expect(sentences.get(`colours.${word}`)).toBeTruthy()
  }
})

test.each(colourWords)('what is drawn and held up for %s bears that word', (word) => {
  expect(colourWord(labOf(drawnAs(word)))).toBe(word)
  expect(examplesOf(word).map(colourWord)).toEqual(examplesOf(word).map(() => word))
})

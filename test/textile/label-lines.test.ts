import { expect, test } from 'vitest'
import { readLabel } from '../../src/textile/label.ts'
import { readLines } from '../../src/textile/label-lines.ts'

const lines = (...texts: string[]) => texts.map((text) => ({ text, sure: 1 }))

test('lines of a picture are read as typed lines are', () => {
  const words = ['60% COTTON', '40% POLYESTER', 'WARM IRON']
  expect(readLines(lines(...words))).toEqual(readLabel(words.join('\n')))
})

test('a share whose digits may be others makes the reading doubtful, and says why', () => {
  const [cotton, polyester] = lines('60% COTTON', '40% POLYESTER')
  const reading = readLines([{ ...cotton!, sure: 0.1 }, polyester!])
  expect(reading.blocks).toEqual(readLabel('60% COTTON\n40% POLYESTER').blocks)
  expect(reading).toMatchObject({ sure: false, problems: [{ code: 'letters_unclear' }] })
  expect(reading.confidence).toBeLessThan(0.7)
})

test('an unclear letter far from any share makes no share doubtful', () => {
  const reading = readLines([...lines('100% COTTON'), { text: 'LANTERN', sure: 0.1 }])
  expect(reading.problems.map(({ code }) => code)).not.toContain('letters_unclear')
})

test('a picture that is not clear makes the whole doubtful', () => {
  const words = lines('60% COTTON', '40% POLYESTER')
  expect(readLines(words, { isClear: false })).toMatchObject({
    blocks: readLines(words).blocks,
    sure: false,
    problems: [{ code: 'letters_unclear' }],
  })
})

test('a part that names one fibre twice may have lost the name in between, and is asked about', () => {
  const codes = (...texts: string[]) => {
    const { sure, problems } = readLines(lines(...texts))
    return { sure, codes: problems.map(({ code }) => code) }
  }
  expect(codes('90% Elastan', '9% Jedwab', '1% Elastan')).toEqual({
    sure: false,
    codes: ['pairing'],
  })
  expect(codes('60% recycled polyester', '40% polyester').codes).not.toContain('pairing')
})

const doubts = (...texts: string[]) => readLines(lines(...texts)).problems.map(({ code }) => code)

test('a label of which only a lesser part was read may hide what the garment is made of, and is asked about', () => {
  expect(doubts('Inner Lining:', '55% Cotton, 45% Lyocell')).toEqual(['section_unclear'])
  expect(doubts('Shell:', '100% Wool', 'Lining:', '100% Viscose')).toEqual([])
})

test('a line above the shares that may name a part is asked about: what the body is made of may lie in a fold', () => {
  const covered = ['Bonv', 'INNCK L', '52 % COTTON 48 %', 'NYLON', 'MACHINE WASH COLD']
  expect(doubts(...covered)).toEqual(['section_unclear'])
  for (const above of ['Relaxed Fit', 'Qualor', 'Marsh', 'XL', 'COMPOSITION', 'Cotton'])
    expect(doubts(above, '52 % COTTON, 48 % NYLON')).not.toContain('section_unclear')
})

test('a piece of a name in a line of its own is asked about: the rest of it may lie in a fold', () => {
  expect(doubts('tate', '55% Cotton, 45% Lyocell')).toEqual(['fibre_unexplained'])
  expect(doubts('Acet', 'Cotton 90 % Viscose', '10 %')).toEqual(['fibre_unexplained'])
  expect(doubts('Made in', '55% Cotton, 45% Lyocell')).toEqual([])
})

test('no lines have no words', () => {
  expect(readLines([])).toMatchObject({ sure: false, problems: [{ code: 'no_words' }] })
})

const ironing = (...texts: string[]) => {
  const { iron, sure, problems } = readLines(lines('100% COTTON', ...texts))
  return { level: iron.level, sure, problems: problems.map(({ code }) => code) }
}
const asked = { sure: false, problems: ['iron_unclear'] }

test('a level behind what may be the rest of a ban gives no leave', () => {
  expect(ironing('the Stryes', 'het. 34.154')).toEqual({ level: null, ...asked })
})

// Hungarian, Finnish and Russian from memory; no table here reads them.
test.each(['NEM VASALHATÓ', 'Vasalás 110°C', 'Ei saa silittää', 'Не гладить'])(
  'a word for ironing in a language that is not read is asked about: %s',
  (line) => expect(ironing(line)).toEqual({ level: null, ...asked }),
)

test.each(['NEM FEHÉRÍTHETŐ. GÉPI MOSÁS 30°C', 'Не отбеливать', 'Ei valkaisua'])(
  'a ban of something else in such a language leaves no doubt about ironing: %s',
  (line) => expect(ironing(line)).toEqual({ level: null, sure: true, problems: [] }),
)

// Invented slips; a ban that may have been one is never leave to iron, and no reading of it is sure.
test.each([
  'Do hot iron',
  'Do n# iron',
  'N planchar',
  'on stirare',
  'Far ei strykas',
  'na se calca',
  'ncht bugeln',
  'n planchar caliente',
  'Do not irkm',
  'No plnchr',
])('a ban half read is asked about: %s', (line) => {
  const { level, ...rest } = ironing(line)
  expect(rest).toEqual(asked)
  expect([null, 'none', 'cool']).toContain(level)
})

test.each([
  'Do not iron',
  'No planchar',
  'Non stirare',
  'Får ej strykas',
  'Nu se calcă',
  'Nicht bügeln',
  'Never ron',
])('a ban that is read whole is sure: %s', (line) => {
  expect(ironing(line)).toEqual({ level: 'none', sure: true, problems: [] })
})

test('a level that two languages say clearly stands for sure beside a half read one', () => {
  const clear = ['Cool iron', 'Plancha tibia']
  expect(ironing(...clear, 'Nxchtq bügeln')).toEqual({ level: 'cool', sure: true, problems: [] })
  expect(ironing('Cool iron', 'Nxchtq bügeln')).toMatchObject(asked)
})

test('a colder level that is half read stands against two languages, and gives way to three', () => {
  const clear = ['Warm iron', 'Plancha media']
  const colder = 'Nicht qvorx bügeln'
  expect(ironing(...clear, colder)).toEqual({ level: 'none', ...asked })
  expect(ironing(...clear, 'Stryk på medelvärme', colder)).toEqual({ level: 'warm', ...asked })
})

test('an ironing line whose letters may be others makes the reading doubtful', () => {
  const [cotton, iron] = lines('100% COTTON', 'HOT IRON')
  expect(readLines([cotton!, { ...iron!, sure: 0.1 }])).toMatchObject({
    iron: { level: 'hot' },
    sure: false,
    problems: [{ code: 'letters_unclear' }],
  })
})

test('the letter X forbids no iron, but for the cross behind the Korean word', () => {
  expect(readLabel('60 X 40 CM\n100% COTTON').iron.level).toBeNull()
  expect(readLabel('면 100%\n다림질: X').iron.level).toBe('none')
})

test('shares above the first name of a part, or a name without shares, may have lost what they had', () => {
  const codes = (...texts: string[]) => readLines(lines(...texts)).problems.map(({ code }) => code)
  expect(codes('100% POLYESTER', 'SLEEVE:', '90% POLYESTER 10% WOOL')).toEqual(['section_unclear'])
  expect(codes('BQXY:', '65% COTTON 35% LINEN', 'LINER:', '100% MODAL')).toEqual([
    'section_unclear',
  ])
  expect(codes('BODY:', '65% SILK 35% POLYESTER', 'LINING:', 'UOTO')).toEqual(['section_unclear'])
  expect(codes('BODY:', '65% SILK 35% POLYESTER', 'LINING:', '100% COTTON')).toEqual([])
})

test('an ironing line whose gaps were lost is read all the same', () => {
  expect(readLabel('100% COTTON\nIRONATLOW TEMPERATURE')).toMatchObject({
    iron: { level: 'cool' },
    sure: true,
  })
})

test('shares whose own names stand behind them are not given to the names before, though they add up so too', () => {
  // Three of five languages lost the share of polyamide.
  const told = readLines(
    lines(
      'DE 74% BAUMWOLLE 14% VISKOSE 7%',
      'POLYESTER SK NYLON',
      'RO 74% BUMBAC 14% VASCOZA 7%',
      'POLIESTER SK POLIAMIDA',
      'CS 74% BAVLNA 14% VISKOZA 7%',
      'POLYESTER 5% POLYAMID',
      'P 74% ALGODAO 14% VISCOSE 7%',
      'POLIESTER 5% POLIAMIDA',
      'FI 74% PUUVTLLA 14% VISKOOSI 7%',
      'POLYESTERI SK POLYAMIDI',
    ),
  )
  const shares = [
    ['cotton', 74],
    ['viscose', 14],
    ['polyester', 7],
    ['polyamide', 5],
  ]
  expect(told.blocks.map(({ fibres }) => fibres.map((one) => [one.fibre, one.percent]))).toEqual([
    shares,
  ])
  expect(told.sure).toBe(false)
  expect(told.problems.map(({ code }) => code)).toContain('pairing')
})

import type { Act, Flow, Reply, Rules } from '../../src/flow/grammar.ts'
import { readFlow } from '../../src/flow/read.ts'
import { parseSource } from '../../src/flow/source.ts'
import { chosenIn } from '../../src/flow/walk.ts'

/** An invented flow that uses all of the grammar: parcels to be sent. */
export const parcelText = `
flow: parcels
parts:
  - id: sender
    questions:
      - id: country
        kind: choice
        options: [here, abroad]
        read_by: [clerk]
      - id: customs
        kind: text
        when: { rule: goes_abroad }
        longest: 20
        read_by: [clerk]
  - id: parcel
    repeat: true
    most: 3
    questions:
      - id: size
        kind: choice
        options: [small, large, { option: huge, when: { rule: stays_here } }]
        read_by: [price]
        next:
          - { when: { answer: small }, to: contents }
          - { to: weight }
      - id: weight
        kind: number
        min: 1
        max: 40
        unit: kg
        read_by: [price, needs_two_people]
        next:
          - { when: { rule: needs_two_people }, to: floor }
          - { to: contents }
      - id: floor
        kind: confirm
        options: ["yes", "no"]
        read_by: [clerk]
      - id: contents
        kind: many
        options: [none, glass, food, paper]
        read_by: [clerk]
        next:
          - { when: { answer: glass }, to: care }
          - { to: picture }
      - id: care
        kind: text
        optional: true
        read_by: [clerk]
      - id: picture
        kind: photo
        optional: true
        max: 2
        read_by: [clerk]
  - id: last
    questions:
      - id: contact
        kind: contact
        read_by: [clerk]
`

export const parcelSource = parseSource(parcelText, 'parcels.yaml')

export const parcels: Flow = readFlow(parcelSource.value, parcelSource)

const has = (reply: Reply | undefined, option: string): boolean =>
  reply !== undefined && chosenIn(reply).includes(option)

const amountIn = (reply: Reply | undefined): number =>
  reply && 'given' in reply && typeof reply.given === 'object' && 'amount' in reply.given
    ? reply.given.amount
    : 0

export const parcelRules: Rules = {
  goes_abroad: { reads: ['country'], holds: ({ country }) => has(country, 'abroad') },
  stays_here: { reads: ['country'], holds: ({ country }) => has(country, 'here') },
  needs_two_people: { reads: ['weight'], holds: ({ weight }) => amountIn(weight) > 25 },
}

export const parcelReaders = ['clerk', 'price']

export const add = (item: number): Act => ({ act: 'add', item })
export const copy = (item: number, from: number): Act => ({ act: 'copy', item, from })
export const drop = (item: number): Act => ({ act: 'drop', item })
export const restore = (item: number): Act => ({ act: 'restore', item })
export const close: Act = { act: 'close' }

export const say = (item: number, question: string, given: unknown): Act => ({
  act: 'answer',
  item,
  question,
  reply: { given } as Reply,
})

export const skip = (item: number, question: string): Act => ({
  act: 'answer',
  item,
  question,
  reply: { skipped: true },
})

export const ask = (item: number, question: string): Act => ({
  act: 'answer',
  item,
  question,
  reply: { asked: 'please look' },
})

export const kg = (amount: number) => ({ amount, unit: 'kg' })
export const ana = { name: 'Ana Example', email: 'ana@example.org', phone: '' }

/** A small parcel of paper, all the way to its end. */
export const smallParcel = (item: number): Act[] => [
  add(item),
  say(item, 'size', 'small'),
  say(item, 'contents', ['paper']),
  skip(item, 'picture'),
]

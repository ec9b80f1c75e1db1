import { describe, test } from 'vitest'
import { each, isCaught, refusals } from '../help/mutations.ts'

describe('what could make it better', () => {
  test.each(
    each([
      [
        'a question that is none',
        'question: stretch',
        'question: strech',
        'unknown-question',
        'pull-test',
      ],
      ['a customer led to no question', '    question: weight\n', '', 'no-question', 'feel-weight'],
      [
        'a reason that is none',
        'answers: [wear-unknown]',
        'answers: [worn-unknown]',
        'unknown-flag',
        'worn-unknown',
      ],
      [
        'an act without words',
        'act: feel-weight',
        'act: weigh-it',
        'tables/words/en.yaml missing-words',
        'better.acts.weigh-it',
      ],
      [
        'a value without words',
        '{ yield: [enough, few, none] }',
        '{ yield: [enough, few, none, unknown] }',
        'tables/words/es.yaml missing-words',
        'better.if.yield.unknown',
      ],
      [
        'a fact that is none',
        'open: { weight: unknown }',
        'open: { wait: unknown }',
        'grammar',
        'wait is no fact',
      ],
      [
        'a value that is none',
        '{ weight: [fine, medium, heavy, padded] }',
        '{ weight: [fine, airy] }',
        'grammar',
        'airy',
      ],
      [
        'washing what is never to be washed',
        'open: { wash: softener,',
        'open: { wash: never,',
        'grammar',
        'never to be washed',
      ],
    ]),
  )('%s', (_, mutation) => isCaught('better.yaml', mutation))

  test('a fact that is none stops the start', () =>
    isCaught(
      'better.yaml',
      [
        '',
        'open: { weight: unknown }',
        'open: { wait: unknown }',
        'flows_invalid',
        'wait is no fact',
      ],
      refusals,
    ))
})

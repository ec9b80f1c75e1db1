import { afterEach, beforeEach, expect, test } from 'vitest'
import { askedMeanwhile } from '../../src/desk/asked.ts'
import { eachStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

eachStore('questions asked meanwhile', (store) => {
  let workshop: Workshop
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterEach(() => workshop.close())

  test('a question of an intake that is still open is shown, with where it was asked', async () => {
    const key = await workshop.conversation.start('en')
    await workshop.conversation.act(key, {
      act: {
        act: 'answer',
        item: 0,
        question: 'recipient',
        reply: { asked: 'It is for twins. Does that matter?' },
      },
      idem: 'asked-once',
      seen: 0,
    })
    expect(await askedMeanwhile(store().db)).toEqual([
      {
        pile: 1,
        item: 0,
        name: null,
        question: 'recipient',
        text: 'It is for twins. Does that matter?',
        at: clock(),
      },
    ])
  })

  test('once the pile is confirmed its questions are with the pile', async () => {
    await confirmPile(workshop.conversation, [{ details: { asked: 'Which?' } }])
    expect(await askedMeanwhile(store().db)).toEqual([])
  })
})

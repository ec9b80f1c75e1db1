import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import { answerAll, pileAnswers, shirt } from '../help/chat.ts'
import { oneStore } from '../help/stores.ts'
import { type Fields, Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))

oneStore('many garments at once', (store) => {
  let app: TestApp
  let walker: Walker
  beforeAll(async () => {
    app = await openApp(store(), { clock: clock.read })
  })
  afterAll(() => app?.close())
  beforeEach(async () => {
    walker = await new Walker(app.url).start()
    await answerAll(walker, pileAnswers)
    await walker.open(`${walker.pilePath}/closet`)
  })

  const hidden = () =>
    Object.fromEntries(
      walker.root
        .querySelectorAll('form[data-closet] input[type=hidden]')
        .map((one) => [one.getAttribute('name')!, one.getAttribute('value')!]),
    )
  /** What the page has ticked, by the fields' names. */
  const ticked = (name: string) =>
    walker.root
      .querySelectorAll(`form[data-closet] input[name=${name}][checked]`)
      .map((one) => one.getAttribute('value')!)
  async function send(fields: Fields): Promise<void> {
    const form = walker.root.querySelector('form[data-closet]')!
    const body = new URLSearchParams(hidden())
    for (const [name, value] of Object.entries(fields)) {
      body.delete(name)
      for (const one of typeof value === 'string' ? [value] : value) body.append(name, one)
    }
    await walker.open(form.getAttribute('action')!, { method: 'POST', body })
  }
  const asShown = (more: Fields = {}): Fields => ({
    right: ticked('right'),
    mark: ticked('mark'),
    ...more,
  })
  const key = () => walker.pilePath.split('/')[2]!
  const pile = async () => (await app.conversation.open(key())).pile
  const acts = async () => (await app.conversation.open(key())).entries.length

  test('a line each, looked over at once, and only the label is asked before photos', async () => {
    await send({ lines: "Dad's blue checked flannel shirt, large\n2 x plain grey T-shirt, M\n\n" })
    expect(ticked('right')).toEqual([
      '1:kind',
      '1:size',
      '1:pattern',
      '1:colours',
      '2.3:kind',
      '2.3:size',
      '2.3:pattern',
      '2.3:colours',
    ])
    await send(asShown())
    for (const n of [1, 2, 3]) {
      expect(walker.question).toMatchObject({ id: 'label', item: n })
      await walker.send(shirt.label!)
      expect(walker.question).toMatchObject({ id: 'photos', item: n })
      await walker.skip()
    }
    expect([...walker.grades.keys()]).toEqual([3, 2, 1])
    const { garments } = await pile()
    expect(garments.map(({ told }) => told.size)).toEqual(['L', 'M', 'M'])
    expect(garments[0]!.facts).toMatchObject({
      wear: 'sound',
      soil: 'clean',
      pattern: 'stripe-check',
    })
  })

  test('the same page sent again changes nothing', async () => {
    await send({ lines: '3 x plain grey T-shirt, M' })
    const form = { ...asShown(), ...hidden() }
    const to = `${walker.pilePath}/closet/look`
    const again = new URLSearchParams()
    for (const [name, value] of Object.entries(form))
      for (const one of typeof value === 'string' ? [value] : value) again.append(name, one)
    await walker.open(to, { method: 'POST', body: again })
    const kept = await acts()
    await walker.open(to, { method: 'POST', body: again })
    expect(walker.status).toBe(200)
    expect(await acts()).toBe(kept)
  })

  test('what could keep a garment at home is told before its label is asked for', async () => {
    await send({ lines: 'plain green dress, M\nblue striped flannel shirt, L' })
    await send(asShown({ mark: ['1:history:damp', '2:history:body-fluid'] }))
    expect(
      walker.root.querySelectorAll('[data-early]').map((one) => one.getAttribute('data-early')),
    ).toEqual(['home', 'eyes'])
    expect(walker.text('[data-early=home] strong')).toBe('1 · plain green dress: best kept at home')
    await walker.press('drop-garment', 1)
    expect(walker.question).toMatchObject({ id: 'label', item: 2 })
  })

  test('what is taken from the words, or left to be asked alone, is asked one by one', async () => {
    await send({ lines: 'plain grey T-shirt, M, holes\nplain blue T-shirt, L' })
    const right = ticked('right').filter((one) => one !== '1:wear')
    await send(asShown({ right, alone: '2' }))
    const { items } = (await pile()).followed
    expect(items.map(({ aside }) => aside.wear)).toEqual([undefined, undefined])
    expect(items.map(({ aside }) => aside.history)).toEqual([{ given: ['none'] }, undefined])
  })

  test('stains that the words tell of are ticked, and open to be seen', async () => {
    await send({ lines: 'white cotton blouse, S, coffee stain' })
    expect(ticked('mark')).toEqual(['1:history:stained'])
    expect(walker.root.querySelector('[data-mark="history:stained"]')!.hasAttribute('open')).toBe(
      true,
    )
    await send(asShown())
    const [blouse] = (await pile()).followed.items
    expect(blouse!.aside.history).toEqual({ given: ['stained'] })
  })

  test('says that the pile is enough once it is, and not before', async () => {
    const told: boolean[] = []
    const busyAndQuiet = '9 x blue checked flannel shirt, XL\n9 x plain white T-shirt, XL'
    for (const lines of ['blue checked flannel shirt, L', busyAndQuiet]) {
      await walker.open(`${walker.pilePath}/closet`)
      await send({ lines })
      await send(asShown())
      while (walker.question?.id === 'label' || walker.question?.id === 'photos') {
        if (walker.question.id === 'label') await walker.send(shirt.label!)
        else await walker.skip()
      }
      do await walker.open(walker.pilePath)
      while (walker.root.querySelector('#so-far[data-unsettled]'))
      told.push(walker.root.querySelector('#so-far .enough') !== null)
      await walker.open(`${walker.pilePath}/closet`)
      told.push(walker.root.querySelector('.tally .enough') !== null)
    }
    expect(told).toEqual([false, false, true, true])
  })

  test('a tap on a kind adds a garment and keeps the lines that were begun', async () => {
    await send({ lines: 'blue', kind: 'jeans' })
    expect(walker.text('.closet-added')).toBe('Added: Jeans.')
    expect(walker.root.querySelector('#field-lines')!.text.trim()).toBe('blue')
    expect((await pile()).garments.map(({ facts }) => facts.kind)).toEqual(['jeans'])
  })

  test.each([
    ['', 'Please answer first'],
    ['31 x plain T-shirt', 'more than 30 garments'],
    [Array.from({ length: 31 }, (_, n) => `shirt ${n}`).join('\n'), 'more than 30 garments'],
    [`shirt\n${'x'.repeat(401)}`, 'too long'],
  ])('lines that cannot be taken come back as they were: %#', async (lines, says) => {
    await send({ lines })
    expect(walker.status).toBe(422)
    expect(walker.text('#error-lines')).toContain(says)
    expect(walker.root.querySelector('#field-lines')!.text).toBe(lines)
    expect((await pile()).garments).toEqual([])
  })

  test.each([
    [{ kind: 'spaceship' }, 422],
    [{ kind: '__proto__' }, 422],
  ])('a kind that is none is refused: %o', async (fields, status) => {
    await send(fields)
    expect(walker.status).toBe(status)
    expect(await pile()).toMatchObject({ garments: [] })
  })

  test.each([
    [{ mark: '1:history:spell' }, 422],
    [{ mark: '1:wear:sound' }, 422],
    [{ mark: '1:label:none' }, 400],
    [{ kind: '1:spaceship', right: [] }, 422],
    [{ garments: '99' }, 409],
    [{ garments: 'x.y' }, 409],
    [{ garments: '' }, 409],
  ] as const)('what no page of ours sends is refused whole: %o', async (fields, status) => {
    await send({ lines: 'plain grey T-shirt, M' })
    const kept = await acts()
    await send(asShown(fields))
    expect(walker.status).toBe(status)
    expect(await acts()).toBe(kept)
  })
})

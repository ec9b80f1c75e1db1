import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import { answerAll, pileAnswers, shirt } from '../help/chat.ts'
import { oneStore } from '../help/stores.ts'
import { Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))
const line =
  "dad's blue striped flannel, large, 100 % cotton, hole at the elbow, coffee stain, must be in the quilt, maybe thick"

oneStore('a garment in the customer’s own words', (store) => {
  let app: TestApp
  let walker: Walker
  beforeAll(async () => {
    app = await openApp(store(), { clock: clock.read })
  })
  afterAll(() => app?.close())
  beforeEach(async () => {
    walker = await new Walker(app.url).start()
    await answerAll(walker, pileAnswers)
    await walker.press('add-garment')
  })

  const ticks = () =>
    walker.root
      .querySelectorAll('form[data-question] input[name=value][checked]')
      .map((one) => one.getAttribute('value'))
  const options = () =>
    walker.root.querySelectorAll('form[data-question] .option').map((one) => ({
      value: one.querySelector('input')!.getAttribute('value'),
      ticked: one.querySelector('input')!.hasAttribute('checked'),
      says: [one.querySelector('.option-words')!.childNodes[0]!, one.querySelector('.option-help')!]
        .map(({ text }) => text.trim())
        .join(' '),
    }))
  test('is confirmed part by part, with the words behind each', async () => {
    await walker.send({ value: line })
    expect(walker.question).toMatchObject({ id: 'words_check', kind: 'many', optional: true })
    expect(options()).toEqual([
      {
        value: 'kind',
        ticked: true,
        says: 'What it is: Shirt with buttons, also flannel You wrote: flannel',
      },
      { value: 'size', ticked: true, says: 'Size: L You wrote: large' },
      { value: 'wear', ticked: true, says: 'Wear: It has holes You wrote: hole' },
      { value: 'pattern', ticked: true, says: 'Pattern: Stripes or checks You wrote: striped' },
      { value: 'colours', ticked: true, says: 'Colours: Blue You wrote: blue' },
    ])
  })

  test('what is confirmed is not asked again, and the rest is', async () => {
    await walker.send({ value: line })
    await walker.send({ value: ['kind', 'size', 'wear', 'pattern', 'colours'] })
    const ids: string[] = []
    while (walker.question) {
      const { id, optional } = walker.question
      ids.push(id)
      const fields = shirt[id] ?? (optional ? { act: 'skip' } : {})
      await walker.send(fields)
      expect(walker.status).toBe(200)
    }
    expect(ids).toEqual(['label', 'photos', 'history', 'details', 'where', 'story'])
    expect(walker.text('.tag[data-garment="1"] .tag-name')).toContain("dad's blue striped flannel")
  })

  test('what begins an answer is ticked and filled in where it is asked', async () => {
    await walker.send({ value: line })
    await walker.send({ value: ['kind', 'size', 'wear', 'pattern', 'colours'] })
    expect(walker.question?.id).toBe('label')
    expect(walker.text('textarea[name=words]')).toBe('100 % cotton')
    await answerAll(walker, shirt, 'history')
    expect(ticks()).toEqual(['stained'])
    expect(walker.text('#help')).toContain('We ticked what you told us already')
    await answerAll(walker, shirt, 'details')
    expect(ticks()).toEqual(['must-use'])
  })

  test('a part that is refused is asked', async () => {
    await walker.send({ value: line })
    await walker.send({ value: ['kind', 'pattern'] })
    expect(walker.question?.id).toBe('size')
    await answerAll(walker, shirt, 'wear')
    expect(walker.question?.id).toBe('wear')
  })

  test('passing the page over takes nothing', async () => {
    await walker.send({ value: line })
    await walker.skip()
    expect(walker.question?.id).toBe('kind')
  })

  test('a part that is taken back later is asked again, one that was answered otherwise stays', async () => {
    await walker.send({ value: line })
    await walker.send({ value: ['kind', 'size', 'pattern'] })
    await answerAll(walker, { ...shirt, label: shirt.label! }, 'photos')
    await walker.open(`${walker.pilePath}/1/size`)
    await walker.send({ value: 'XL' })
    await walker.open(`${walker.pilePath}/1/words_check`)
    await walker.send({ value: ['size', 'pattern'] })
    expect(walker.question?.id).toBe('kind')
    await walker.send({ value: 'button-shirt' })
    await walker.open(`${walker.pilePath}/1/size`)
    expect(walker.root.querySelector('input[value=XL]')!.hasAttribute('checked')).toBe(true)
  })

  test('sent twice it counts once', async () => {
    await walker.send({ value: line })
    const page = walker.html
    await walker.send({ value: ['kind', 'size'], idem: 'once-and-no-more' })
    const rows = async () => (await store().db.selectFrom('act').selectAll().execute()).length
    const before = await rows()
    walker.html = page
    await walker.open(`${walker.pilePath}/1/words_check`, {
      method: 'POST',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      body: new URLSearchParams([
        ['value', 'kind'],
        ['value', 'size'],
        ['idem', 'once-and-no-more'],
      ]),
    })
    expect(await rows()).toBe(before)
  })

  test('each answer is kept with the words behind it', async () => {
    await walker.send({ value: line })
    await walker.send({ value: ['kind', 'size'] })
    const acts = (await store().db.selectFrom('act').select('act').execute()).map(({ act }) =>
      JSON.parse(act),
    )
    const last = acts.filter(({ because }) => because !== undefined).slice(-2)
    expect(last).toMatchObject([
      { question: 'kind', reply: { given: 'button-shirt' }, because: 'flannel' },
      { question: 'size', reply: { given: 'L' }, because: 'large' },
    ])
  })

  test('a name alone costs no page more', async () => {
    await walker.send({ value: 'The red one from Tuesday' })
    expect(walker.question?.id).toBe('kind')
  })

  test('markup and marks of direction in a line are shown as they are, and do nothing', async () => {
    await walker.send({ value: 'red scarf <script>alert(1)</script> \u202e size L, polka dots' })
    expect(walker.question?.id).toBe('words_check')
    expect(walker.html).not.toContain('<script>alert')
    await walker.send({ value: ['kind', 'pattern', 'colours'] })
    expect(walker.status).toBe(200)
  })

  test('a line that is too long is refused with what was written', async () => {
    await walker.send({ value: 'red scarf '.repeat(60) })
    expect(walker.status).toBe(422)
    expect(walker.question?.id).toBe('name')
    expect(walker.text('textarea[name=value]')).toContain('red scarf')
  })

  test('in Spanish too', async () => {
    await walker.open(`${walker.pilePath}/language/es`)
    await walker.send({ value: 'camisa azul de papá, talla L, agujero en el codo' })
    expect(options().map(({ says }) => says)).toContain('Talla: L Usted escribió: L')
  })

  test('a copy has the confirmed answers, and is asked nothing of them', async () => {
    await walker.send({ value: line })
    await walker.send({ value: ['kind', 'size', 'wear', 'pattern', 'colours'] })
    await answerAll(walker, shirt)
    await walker.press('copy-garment')
    expect(['photos', null]).toContain(walker.question?.id ?? null)
  })
})

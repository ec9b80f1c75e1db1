import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import {
  type Answers,
  addGarment,
  answerAll,
  closingAnswers,
  pileAnswers,
  shirt,
} from '../help/chat.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { oneStore } from '../help/stores.ts'
import { Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))
const password = 'needle and thimble'

const unlabelled: Answers = {
  ...shirt,
  kind: { value: 'tshirt' },
  label: { found: 'none' },
  pattern: { value: 'solid' },
}
/** A picture in a quilt of plain squares, and nobody knows how large it is or what it is made of. */
const doubtful: Answers = {
  ...unlabelled,
  kind: { value: 'dress' },
  surface: { value: 'woven' },
  stretch: { value: 'unknown' },
  weight: { act: 'ask', note: 'I am not sure' },
  pattern: { value: 'single' },
  print_make: { value: 'unknown' },
  graphic_size: { act: 'ask', note: '' },
}

const lines = (walker: Walker, n = 1) =>
  walker.root.querySelectorAll(`[data-garment="${n}"] [data-better]`).map((line) => ({
    act: line.getAttribute('data-better'),
    text: line.childNodes[0]!.text.replaceAll(/\s+/g, ' ').trim(),
    href: line.querySelector('a')?.getAttribute('href') ?? null,
  }))

oneStore('what could make it better', (store) => {
  let app: TestApp
  let walker: Walker
  beforeAll(async () => {
    app = await openApp(store(), { clock: clock.read })
  })
  afterAll(() => app?.close())
  beforeEach(async () => {
    walker = await new Walker(app.url).start()
  })

  async function reviewed(...garments: Answers[]) {
    await answerAll(walker, pileAnswers)
    for (const garment of garments) await addGarment(walker, garment)
    return walker.open(`${walker.pilePath}/review`)
  }

  test('a garment that is good to send says nothing of it', async () => {
    await reviewed(shirt)
    expect(walker.grades.get(1)).toBe('sound')
    expect(walker.root.querySelector('.better')).toBeNull()
  })

  test('one without a label is told what its label could bring, one tap away, without a script', async () => {
    await reviewed(unlabelled)
    const [line, ...more] = lines(walker)
    expect(more).toEqual([])
    expect(line).toEqual({
      act: 'read-label',
      text: 'Look once more for a care label, in the neck, the side seams and the pockets. Type what it says. If it is made of cotton or linen and the label allows a hot iron, it could be good to send as it is and its backing could be ironed on.',
      href: `${walker.pilePath}/1/label`,
    })

    await walker.open(line!.href!)
    expect(walker.question?.id).toBe('label')
    await walker.send({ found: 'words', words: '100% cotton, hot iron' })
    await answerAll(walker, unlabelled)
    await walker.open(`${walker.pilePath}/review`)
    expect(walker.grades.get(1)).toBe('sound')
    expect(walker.root.querySelector('.better')).toBeNull()
  })

  test('what the act says already stands there once', async () => {
    await reviewed(unlabelled)
    const tag = walker.text('[data-garment="1"] .tag-body')
    expect(tag).toContain('We do not know what this is made of')
    expect(tag).not.toContain('If you find a label inside')
    expect(tag.split('We do not know what this is made of')).toHaveLength(2)
  })

  test('many doubts give the three lightest acts and what all could bring, the layout too', async () => {
    await reviewed(doubtful)
    expect(walker.grades.get(1)).toBe('care')
    expect(lines(walker).map(({ act }) => act)).toEqual([
      'pull-test',
      'feel-weight',
      'look-at-print',
    ])
    expect(walker.text('.better > p:last-child')).toBe(
      'These are the first steps. If all that is still open turns out well, it could be good to send as it is and it could go into Framed pictures.',
    )
  })

  test('a measured picture is led to the kind of quilt, which is a question of the whole pile', async () => {
    await reviewed({
      ...shirt,
      pattern: { value: 'single' },
      print_make: { value: 'in-cloth' },
      graphic_size: { value: '8' },
    })
    expect(lines(walker)).toEqual([
      {
        act: 'another-layout',
        text: 'Choose another kind of quilt. It counts for the whole pile. Then it could be good to send as it is and it could go into Framed pictures.',
        href: `${walker.pilePath}/0/layout_wish`,
      },
    ])
  })

  test('a label that forbids washing is heeded, one that does not lets it be advised', async () => {
    const worn = { ...shirt, history: { value: 'unwashed' } }
    await reviewed(
      { ...worn, label: { found: 'words', words: '100% cotton, warm iron, machine wash' } },
      { ...worn, label: { found: 'words', words: '100% cotton, warm iron, do not wash' } },
      { ...worn, history: { value: 'scent' } },
    )
    expect(lines(walker, 1).map(({ act }) => act)).toEqual(['wash'])
    expect(lines(walker, 2)).toEqual([])
    expect(lines(walker, 3)).toEqual([])
  })

  test('of a garment that stays at home nothing is asked, and only what is grave is told', async () => {
    await reviewed({ ...shirt, wear: { value: 'shattered' } })
    expect(walker.grades.get(1)).toBe('home')
    expect(walker.root.querySelector('.better')).toBeNull()
    expect(walker.root.querySelectorAll('.flag')).toHaveLength(0)
    expect(walker.text('.tag-next')).toContain('Please keep it')
  })

  test('speaks Spanish', async () => {
    walker = await new Walker(app.url).start('es')
    await reviewed(unlabelled)
    expect(walker.text('.better-title')).toBe('Lo que podría mejorarla')
    expect(lines(walker)[0]!.text).toBe(
      'Busque otra vez la etiqueta, en el cuello, las costuras y los bolsillos. Escriba lo que dice. Si es de algodón o lino y la etiqueta permite plancha caliente, podría enviarse tal como está y el refuerzo podría pegarse con la plancha.',
    )
    expect(walker.text('.better-link')).toContain('Cambiar su respuesta: Etiqueta')
  })

  test('the packing list says what a label could bring, and staff see every value and what it gives', async () => {
    await reviewed(unlabelled, shirt)
    await walker.press('confirm-pile')
    await answerAll(walker, closingAnswers)
    if (!walker.confirmed) await walker.press('confirm-pile')
    expect(walker.text('[data-garment="1"] .small-steps')).toBe(
      'If you find a label inside, write down what it says and pin it on. If it is made of cotton or linen and the label allows a hot iron, its backing could be ironed on and we could press it warmer.',
    )
    expect(walker.root.querySelector('[data-better]')).toBeNull()

    await addAccount(store(), clock.read, {
      email: 'marta@lantern-street.example',
      name: 'Marta',
      role: 'staff',
      password,
    })
    const visitor = new Visitor(app.app)
    await visitor.get('/desk/sign-in')
    await visitor.post('/desk/sign-in', { email: 'marta@lantern-street.example', password })
    walker.root = (await import('node-html-parser')).parse(
      (await visitor.get('/desk/piles/1')).body,
    )
    const step = walker.root.querySelector('#garment-1 [data-better=read-label]')!
    expect(step.text).toContain('Heat the fibres bear: not known; Ironing line: no label')
    const rows = step
      .querySelectorAll('tbody tr')
      .map((row) => row.querySelectorAll('th, td').map((cell) => cell.text))
    expect(rows).toContainEqual([
      'Heat the fibres bear: hot',
      'good to send Fuse a backing, within the heat below · 200 °C · Fused backing',
    ])
    expect(rows).toContainEqual([
      'Ironing line: do not iron',
      'we prepare it Do not press · Sewn-in backing',
    ])
    expect(rows).toContainEqual([
      'Ironing line: no label, as now',
      'we prepare it Fuse a backing, within the heat below · 150 °C · Fused backing',
    ])
    expect(rows).toHaveLength(5 + 6)
    expect(walker.root.querySelector('#garment-2 [data-better]')).toBeNull()
  })
})

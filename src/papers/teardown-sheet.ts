import { bulkOf } from '../garment/bulk.ts'
import type { Facts, Recipient, Size } from '../garment/facts.ts'
import type { Grade, Grading } from '../garment/grade.ts'
import type { Panel } from '../garment/panels.ts'
import type { PressPlan } from '../garment/press.ts'
import { type TeardownStep, teardownOf } from '../garment/teardown.ts'
import type { Language, Say } from '../words/words.ts'
import type { Drawing } from './drawing.ts'
import { laidFlat } from './laid-flat.ts'

/** A garment that lies on the bench. `kind` is in the reader's language, `size` null: not told. */
export interface BenchGarment {
  readonly code: string
  readonly name: string
  readonly kind: string
  readonly size: Exclude<Size, 'unknown'> | null
  readonly facts: Facts
  readonly panels: readonly Panel[]
  readonly grading: Grading
}

export interface SheetStep {
  readonly words: string
  /** "With: shears, ruler"; null: hands alone. */
  readonly tools: string | null
  readonly keeps: string | null
  readonly cautions: readonly string[]
  /** "Mind step 4": what a tool asks for, told in full before. */
  readonly again: string | null
}

/** How one garment is taken apart: a page for who does it, in the reader's language. */
export interface TeardownSheet {
  readonly code: string
  readonly name: string
  /** "Jeans · size M"; a garment without a name of its own has its kind for a name. */
  readonly sort: string
  readonly grade: Grade
  /** The press plan, a line each. */
  readonly plan: readonly { readonly name: string; readonly words: string }[]
  /** Its parts laid flat; null where a person decides first, or only measuring tells. */
  readonly drawing: Drawing | null
  /** Room is left to draw them by hand. */
  readonly toDraw: boolean
  /** That a person decides first; null where the garment may be taken apart. */
  readonly wait: string | null
  /** How to read the drawing, or why there is none. */
  readonly legend: string
  readonly steps: readonly SheetStep[]
  /** For the whole garment. */
  readonly notes: readonly string[]
}

const halves = ['', ' 1/4', ' 1/2', ' 3/4']
/** Inches as a ruler shows them. */
const inches = (n: number): string => `${Math.floor(n)}${halves[Math.round((n % 1) * 4)] ?? ''}`

function planLines({ press }: Grading, say: Say): { name: string; words: string }[] {
  const set = say('bench.set_by', { what: say(`trade.setBy.${press.setBy}`) })
  const heat =
    press.ceilingC === null
      ? say('bench.no_iron')
      : say('bench.ceiling', { celsius: press.ceilingC })
  const backing = say(`trade.backing.${press.backing}`)
  const kind = press.interfacing && say(`trade.interfacing.${press.interfacing}`)
  return [
    { name: say('bench.pressing'), words: say(`trade.press.${press.method}`) },
    { name: say('bench.backing'), words: kind ? `${backing}, ${kind}` : backing },
    { name: say('bench.heat'), words: `${heat}, ${set}` },
    { name: say('bench.test'), words: say(`bench.${testOf(press)}`) },
  ]
}

const testOf = ({ testFirst, ceilingC }: PressPlan): string =>
  ceilingC === null ? 'test_none' : testFirst ? 'test_first' : 'test_no'

/** What a tool in the hand asks for each time: told in full once, then by the step's number. */
const ofTools = [
  'sharp-blade',
  'sharp-point',
  'hot-iron',
  'dial-is-no-thermometer',
  'metal-out-first',
  'thick-seams',
  'keep-the-marked-part',
]

/** Cautions that the words of their step already are. */
const saidByStep = ['damp-cloth-test', 'release-gathers']

function sheetSteps(steps: readonly TeardownStep[], { say, locale }: Language): SheetStep[] {
  const list = new Intl.ListFormat(locale, { type: 'unit' })
  const told = new Map<string, number>()
  return steps.map(({ code, tools, keeps, cautions }, i) => {
    const again = cautions.filter((one) => ofTools.includes(one) && told.has(one))
    for (const one of cautions) if (!told.has(one)) told.set(one, i + 1)
    const before = [...new Set(again.map((one) => told.get(one)!))].sort((a, b) => a - b)
    return {
      words: say(`trade.teardown.steps.${code}`),
      tools:
        tools.length > 0
          ? say('bench.tools', {
              tools: list.format(tools.map((one) => say(`trade.teardown.tools.${one}`))),
            })
          : null,
      keeps:
        keeps.length > 0
          ? say('bench.keeps', {
              kept: list.format(keeps.map((one) => say(`trade.teardown.keeps.${one}`))),
            })
          : null,
      cautions: cautions
        .filter((one) => !again.includes(one) && !saidByStep.includes(one))
        .map((one) => say(`trade.cautions.${one}`)),
      again:
        before.length > 0
          ? say('bench.again', { count: before.length, steps: list.format(before.map(String)) })
          : null,
    }
  })
}

function drawingOf(panels: readonly Panel[], say: Say): Drawing {
  return laidFlat(
    panels.map((panel) => ({
      panel,
      name:
        panel.count > 1
          ? say('bench.alike', { name: say(`trade.panels.${panel.name}`), count: panel.count })
          : say(`trade.panels.${panel.name}`),
      measure: say('bench.measure', { w: inches(panel.w), h: inches(panel.h) }),
    })),
  )
}

const isStop = ({ code }: TeardownStep): boolean => code.startsWith('stop-')

/** The teardown sheet of a garment that is graded. */
export function teardownSheet(
  garment: BenchGarment,
  recipient: Recipient,
  language: Language,
): TeardownSheet {
  const { facts, grading, panels } = garment
  const { say } = language
  const steps = teardownOf(facts.kind, facts, recipient, grading.press)
  const stopped = steps.some(isStop)
  const shown = !stopped && panels.length > 0
  const size = garment.size
    ? say('bench.size', { size: say(`intake.size.options.${garment.size}`) })
    : say(shown ? 'bench.size_small' : 'bench.size_unknown')
  const atSteps = new Set(steps.flatMap(({ cautions }) => cautions))
  const besides = grading.press.cautions.filter(
    (code) => !atSteps.has(code) && !saidByStep.includes(code),
  )

  return {
    code: garment.code,
    name: garment.name,
    sort: garment.name === garment.kind ? size : `${garment.kind} · ${size}`,
    grade: grading.grade,
    plan: planLines(grading, say),
    drawing: shown ? drawingOf(panels, say) : null,
    toDraw: !stopped && panels.length === 0,
    legend: say(`bench.${stopped ? 'legend_stopped' : shown ? 'legend' : 'legend_measure'}`),
    wait: grading.grade === 'eyes' || grading.grade === 'home' ? say('bench.wait') : null,
    steps: sheetSteps(steps, language),
    notes: stopped
      ? []
      : [
          say(`trade.teardown.bulk.${bulkOf(facts.kind).bulk}`),
          ...besides.map((code) => say(`trade.cautions.${code}`)),
        ],
  }
}

import { pressFigures } from '../../garment/press.ts'
import type { Step } from '../../garment/why.ts'
import { clothPart, fibreLines, weightPart } from './present-why-cloth.ts'
import type { WhyLine, WhyPart } from './view-why.ts'
import { sourceWords, stepLine, type Told } from './why-words.ts'

export type Asked = Omit<Told, 'chain'> & { readonly chain: Told['chain'] | null }

const isTold = (asked: Asked): asked is Told => asked.chain !== null

/** Why a flag stands. Empty where the garment has no grade. */
export function flagWhy(code: string, asked: Asked): WhyLine[] {
  if (!isTold(asked)) return []
  const { say } = asked.language
  return asked.chain.flags
    .filter(({ row }) => row === code)
    .map((step) => stepLine('flags', step, say(`desk.whys.gives.${step.give.severity}`), asked))
}

const limitWords = (limitC: unknown, { say }: Told['language']): string =>
  limitC === null
    ? say('trade.press.do-not-press')
    : say('desk.whys.gives.limit', { celsius: Number(limitC) })

function heatPart(told: Told): WhyPart {
  const { ceiling } = told.chain
  const { language } = told
  // The limit that holds is read first.
  const limits = ceiling.limits.toSorted(
    (a, b) => Number(b.row === ceiling.row) - Number(a.row === ceiling.row),
  )
  return {
    about: language.say('desk.press.heat'),
    value: language.say('desk.whys.heat', {
      limit: limitWords(ceiling.ceilingC, language),
      what: language.say(`trade.setBy.${ceiling.setBy}`),
    }),
    lines: [
      ...limits.map((step) =>
        stepLine('limits', step, limitWords(step.give.limitC, language), told),
      ),
      ...fibreLines(told),
    ],
  }
}

function stepPart(about: string, table: string, step: Step, gives: string, told: Told): WhyPart {
  return { about, value: gives, lines: [stepLine(table, step, gives, told)] }
}

function permitPart(told: Told): WhyPart {
  const { say } = told.language
  const { permit } = told.chain
  const gives = say(`trade.press.${permit.give.most}`)
  return stepPart(say('desk.whys.permit'), 'permit', permit, gives, told)
}

function backingPart(told: Told): WhyPart {
  const { say } = told.language
  const { backing, press } = told.chain
  const holds = say(`desk.whys.gives.${backing.give.holds === true ? 'holds' : 'holds_not'}`)
  return {
    ...stepPart(say('desk.press.backing'), 'backing', backing, holds, told),
    value: say(`trade.backing.${press.backing}`),
  }
}

type Weighed = Told['chain']['interfacing']['classes'][number]

/** Why a class was not taken, the gravest reason first. */
function verdictOf(it: Weighed, wanted: boolean): string {
  if (it.chosen) return 'chosen'
  if (!wanted) return 'not_wanted'
  if (!it.coolEnough) return 'too_hot'
  if (!it.permitted) return 'not_permitted'
  return it.suitsWeight ? 'another' : 'wrong_weight'
}

function interfacingPart(told: Told): WhyPart {
  const { chain, language } = told
  const { say } = language
  const { interfacing, soles } = chain
  const spare = pressFigures.map((figure) => sourceWords(figure, language))
  return {
    about: say('desk.whys.interfacing'),
    value: interfacing.chosen
      ? say(`trade.interfacing.${interfacing.chosen}`)
      : say('desk.whys.no_interfacing'),
    lines: interfacing.classes.map((it) => ({
      rule: say('desk.whys.sole', {
        name: say(`trade.interfacing.${it.class}`),
        sole: it.soleC,
        spare: interfacing.spareC,
        needs: it.needsC,
        verdict: say(`desk.whys.verdicts.${verdictOf(it, interfacing.wanted)}`),
      }),
      found: [
        say('desk.whys.found_plain', {
          fact: say('desk.press.heat'),
          value: limitWords(interfacing.ceilingC, language),
        }),
      ],
      sources: [
        ...soles.filter((one) => one.class === it.class).map((one) => sourceWords(one, language)),
        ...spare,
      ],
    })),
  }
}

const layoutParts = (told: Told): WhyPart[] =>
  told.chain.layouts.map(({ layout, fits, why, step }) => {
    const { say } = told.language
    const gives = say(`desk.whys.gives.${fits ? 'fits' : 'fits_not'}`, {
      why: say(`trade.layouts.why.${why}`),
    })
    const about = say('desk.whys.layout', { name: say(`trade.layouts.${layout}.name`) })
    return stepPart(about, 'layout-fit', step, gives, told)
  })

/** What was reckoned of a garment beside its flags. Empty where it has no grade. */
export function reckonedOf(asked: Asked): WhyPart[] {
  if (!isTold(asked)) return []
  return [
    heatPart(asked),
    permitPart(asked),
    backingPart(asked),
    interfacingPart(asked),
    ...layoutParts(asked),
    clothPart(asked),
    weightPart(asked),
  ]
}

import { numberFormat } from '../../base/formats.ts'
import type { ClothWhy, PanelWhy } from '../../quilt/cloth-why.ts'
import { fibreOf } from '../../textile/fibres.ts'
import type { HeatWhy, WeighedBlock } from '../../textile/heat-why.ts'
import type { WhyLine, WhyPart, WhySource } from './view-why.ts'
import { sourceWords, type Told } from './why-words.ts'

const numberIn = ({ locale }: Told['language'], most = 2) => {
  const format = numberFormat(locale, { maximumFractionDigits: most })
  return (value: number): string => format.format(value)
}

function shareLine(share: WeighedBlock['shares'][number], { setBy }: HeatWhy, told: Told): WhyLine {
  const { say } = told.language
  const gives =
    share.ironMaxC === 0
      ? say('trade.press.do-not-press')
      : say('desk.whys.gives.limit', { celsius: share.ironMaxC })
  const fibre = say(`fibres.${share.fibre}`)
  const key = !share.counts ? 'left_out' : share.fibre === setBy ? 'sets' : 'counts'
  return {
    rule: say(`desk.whys.fibres.${key}`, { fibre, percent: share.percent, gives }),
    found: [],
    sources: [
      sourceWords(
        { figure: `fibres/${share.fibre}/ironMaxC`, source: fibreOf(share.fibre).source },
        told.language,
      ),
    ],
  }
}

/** Why a little elastane counted, or did not; nothing where none is named. */
function elastaneLines({ elastane }: WeighedBlock, told: Told): WhyLine[] {
  if (elastane.because === 'none-named') return []
  return [
    {
      rule: told.language.say(`desk.whys.elastane.${elastane.because}`, {
        percent: elastane.percent,
        most: elastane.allowedPercent,
      }),
      found: [],
      sources: [
        sourceWords({ figure: 'heat/elastane allowance', source: elastane.source }, told.language),
      ],
    },
  ]
}

/** The fibres behind the heat, or that none were told. */
export function fibreLines(told: Told): WhyLine[] {
  const { fibres } = told.chain
  const { say } = told.language
  if (fibres.from !== 'fibres') {
    return [{ rule: say('desk.whys.fibres.untold'), found: [], sources: [] }]
  }
  const because: WhyLine = {
    rule: say(`desk.whys.because.${fibres.because}`),
    found: [],
    sources: [],
  }
  return [
    because,
    ...fibres.blocks.flatMap((block) => [
      ...block.shares.map((share) => shareLine(share, fibres, told)),
      ...elastaneLines(block, told),
    ]),
  ]
}

/** Each source once, with every figure that names it. */
function bySource(sources: readonly WhySource[]): WhySource[] {
  const found = new Map<string, WhySource>()
  for (const one of sources) {
    const key = `${one.kind} ${one.words}`
    const rows = found.get(key)?.row.split('; ') ?? []
    found.set(key, { ...one, row: [...new Set([...rows, one.row])].join('; ') })
  }
  return [...found.values()]
}

/** "armhole 2 × 8 in, 2 times" for what is lost twice alike. */
function counted(lost: readonly string[], { say }: Told['language']): string[] {
  const count = (what: string) => lost.filter((one) => one === what).length
  return [...new Set(lost)].map((what) => say('desk.whys.times', { what, count: count(what) }))
}

function panelLine(panel: PanelWhy, told: Told): WhyLine {
  const { say } = told.language
  const number = numberIn(told.language)
  const inches = ({ w, h }: { w: number; h: number }) =>
    say('desk.whys.inches', { w: number(w), h: number(h) })
  return {
    rule: say('desk.whys.panel', {
      name: say(`trade.panels.${panel.name}`),
      count: panel.count,
      from: inches(panel.from),
      left: inches(panel.left),
      pieces: panel.pieces,
    }),
    found: [
      ...panel.off.map((edge) =>
        say('desk.whys.off', {
          what: say(`desk.whys.losses.${edge.what}`),
          inches: number(edge.w || edge.h),
        }),
      ),
      ...counted(
        panel.lost.map((loss) =>
          say('desk.whys.lost', {
            what: say(`desk.whys.losses.${loss.what ?? 'hole'}`),
            inches: inches(loss),
          }),
        ),
        told.language,
      ),
    ],
    sources: bySource([...panel.off, ...panel.lost].map((one) => sourceWords(one, told.language))),
  }
}

function flatLine({ kind, countedAs, flat }: ClothWhy, told: Told): WhyLine[] {
  const { say, has } = told.language
  if (!flat || countedAs === null) return []
  const number = numberIn(told.language)
  const size = `intake.size.options.${countedAs}`
  return [
    {
      rule: say('desk.whys.flat', {
        kind: say(`intake.kind.options.${kind}`),
        size: has(size) ? say(size) : countedAs,
        inches: say('desk.whys.inches', { w: number(flat.widthIn), h: number(flat.lengthIn) }),
      }),
      found: [],
      sources: [
        sourceWords({ figure: `sizes/${kind}/${countedAs}`, source: flat.source }, told.language),
      ],
    },
  ]
}

/** Panels and yield. */
export function clothPart(told: Told): WhyPart {
  const { say } = told.language
  const { cloth } = told.chain
  const enough: WhyLine = {
    rule: say('desk.whys.enough', { from: cloth.enoughFrom.pieces, side: cloth.piece.w }),
    found: [say('desk.whys.pieces', { count: cloth.pieces })],
    sources: bySource([
      sourceWords(cloth.enoughFrom, told.language),
      sourceWords(cloth.piece, told.language),
    ]),
  }
  const measured: WhyLine = { rule: say('desk.whys.measure'), found: [], sources: [] }
  return {
    about: say('desk.facts.yield.name'),
    value: say(`desk.facts.yield.${cloth.yield}`),
    lines:
      cloth.panels.length === 0
        ? [measured]
        : [...flatLine(cloth, told), ...cloth.panels.map((one) => panelLine(one, told)), enough],
  }
}

/** What it adds to the parcel. */
export function weightPart(told: Told): WhyPart {
  const { say } = told.language
  const { grams, largeG, share, figure, source } = told.chain.weight
  const number = numberIn(told.language)
  return {
    about: say('desk.whys.weight'),
    value: say('desk.whys.grams', { grams }),
    lines: [
      {
        rule:
          share === null
            ? say('desk.whys.weighs', { grams: largeG })
            : say('desk.whys.weighs_by_size', { large: largeG, share: number(share), grams }),
        found: [],
        sources: [sourceWords({ figure, source }, told.language)],
      },
    ],
  }
}

import type { Report, Spot, Surroundings } from './check.ts'
import { answersOf } from './edges.ts'
import type { Flow } from './grammar.ts'
import { type Naming, rulesOf } from './pin.ts'
import { optionNames } from './rules.ts'

/** Every name a question uses: rules, readers, drawings, cautions, options in edges, words. */
export function checkNames(flow: Flow, spots: readonly Spot[], around: Surroundings): void {
  const drawings = new Set(around.drawings)
  const cautions = new Set(around.cautions)
  const readers = new Set(around.readers)
  for (const spot of spots) {
    const { question, report } = spot
    for (const naming of rulesOf(question)) checkRule(flow, spots, spot, naming, around)
    checkReaders(spot, readers, around)
    if (question.drawing && !drawings.has(question.drawing)) {
      report('unknown-drawing', `there is no drawing ${question.drawing}`, ['drawing'])
    }
    for (const [at, caution] of (question.cautions ?? []).entries()) {
      if (cautions.has(caution)) continue
      report('unknown-caution', `there is no caution ${caution}`, ['cautions', at])
    }
    checkAnswers(spot)
    checkWords(spot, around)
  }
}

function checkReaders({ question, report }: Spot, readers: Set<string>, around: Surroundings) {
  const reads = (name: string): boolean => {
    if (readers.has(name)) return true
    return ruleOf(around, name)?.reads.includes(question.id) ?? false
  }
  for (const [at, name] of question.read_by.entries()) {
    if (reads(name)) continue
    const why = ruleOf(around, name)
      ? `the rule ${name} does not look at it`
      : `nobody is called ${name}`
    report('unknown-reader', why, ['read_by', at])
  }
  if (!question.read_by.some(reads)) report('answer-unread', 'nobody reads the answer', ['read_by'])
}

const ruleOf = ({ rules }: Surroundings, name: string) =>
  Object.hasOwn(rules, name) ? rules[name] : undefined

function checkRule(
  flow: Flow,
  spots: readonly Spot[],
  spot: Spot,
  { rule: name, path, sees }: Naming,
  around: Surroundings,
): void {
  const rule = ruleOf(around, name)
  if (!rule) {
    spot.report('unknown-rule', `there is no rule ${name}`, path)
    return
  }
  for (const read of rule.reads) {
    const source = spots.find(({ question }) => question.id === read)
    const why = source ? cannotSee(flow, spot, source, sees) : 'is no question of this flow'
    if (why) spot.report('rule-reads', `the rule ${name} reads ${read}, which ${why}`, path)
  }
}

/** Why a rule named at a spot never sees the reply of another one; null where it does. */
function cannotSee(flow: Flow, spot: Spot, source: Spot, sees: Naming['sees']): string | null {
  if (source.partAt > spot.partAt) return 'comes later'
  if (source.partAt < spot.partAt) {
    return flow.parts[source.partAt]!.repeat ? 'belongs to single items' : null
  }
  const known = sees === 'after' ? source.at <= spot.at : source.at < spot.at
  return known ? null : 'comes later'
}

function checkAnswers({ question, report }: Spot): void {
  const options = optionNames(question)
  for (const [at, { when }] of (question.next ?? []).entries()) {
    if (!when || 'rule' in when) continue
    for (const answer of answersOf(when.answer)) {
      if (options.includes(answer)) continue
      report('unknown-answer', `${answer} is not one of its options`, ['next', at, 'when'])
    }
  }
}

function checkWords({ question, report }: Spot, { words }: Surroundings): void {
  const keys = ['ask', 'why', ...optionNames(question).map((option) => `options.${option}`)]
  for (const [language, texts] of words) {
    for (const key of keys) checkText(report, language, texts, `${question.id}.${key}`)
  }
}

function checkText(
  report: Report,
  language: string,
  texts: { has(key: string): boolean },
  key: string,
): void {
  if (texts.has(key)) return
  report('words-missing', `no words in ${language}`, [], `${language}: ${key}`)
}

import type { Report, Spot } from './check.ts'
import type { Flow, Kind, Question } from './grammar.ts'
import { optionNames } from './rules.ts'

type Field = 'options' | 'min' | 'max' | 'unit' | 'step' | 'longest'

const fields: readonly Field[] = ['options', 'min', 'max', 'unit', 'step', 'longest']

/** What each kind must say, and what else it may. */
const shapes: Readonly<Record<Kind, { needs: readonly Field[]; takes: readonly Field[] }>> = {
  choice: { needs: ['options'], takes: [] },
  confirm: { needs: ['options'], takes: [] },
  many: { needs: ['options'], takes: [] },
  symbols: { needs: ['options'], takes: [] },
  number: { needs: ['min', 'max', 'unit'], takes: ['step'] },
  photo: { needs: ['max'], takes: [] },
  spots: { needs: ['options', 'max'], takes: [] },
  text: { needs: [], takes: ['longest'] },
  label: { needs: [], takes: ['longest'] },
  contact: { needs: [], takes: [] },
}

/** Each part and question by itself: ids, and the fields its kind needs. */
export function checkShape(
  flow: Flow,
  spots: readonly Spot[],
  partNote: (at: number) => Report,
): void {
  const parts = new Set<string>()
  let repeated = false
  for (const [at, part] of flow.parts.entries()) {
    const report = partNote(at)
    if (parts.has(part.id)) report('duplicate-id', 'another part has this id')
    if (part.repeat && repeated) report('second-repeat', 'only one part of a flow may be repeated')
    if (part.most && !part.repeat) report('field-idle', 'most belongs to a repeated part', ['most'])
    parts.add(part.id)
    repeated ||= part.repeat === true
  }
  const ids = new Set<string>()
  for (const { question, report } of spots) {
    if (question.id === 'end') report('reserved-id', 'this name means the end of a part', ['id'])
    if (ids.has(question.id)) report('duplicate-id', 'another question has this id', ['id'])
    ids.add(question.id)
    checkFields(question, report)
    checkOptions(question, report)
  }
}

function checkFields(question: Question, report: Report): void {
  const { needs, takes } = shapes[question.kind]
  for (const field of fields) {
    const there = question[field] !== undefined
    if (!there && needs.includes(field)) {
      report('field-missing', `a ${question.kind} needs ${field}`)
    }
    if (there && !needs.includes(field) && !takes.includes(field)) {
      report('field-idle', `a ${question.kind} takes no ${field}`, [field])
    }
  }
  const { min, max } = question
  if (min !== undefined && max !== undefined && min > max) {
    report('empty-range', `no number lies from ${min} to ${max}`, ['min'])
  }
  if ((question.kind === 'photo' || question.kind === 'spots') && max !== undefined && max < 1) {
    report('empty-range', 'nothing could be sent', ['max'])
  }
}

function checkOptions(question: Question, report: Report): void {
  const { options } = question
  if (!options) return
  const names = optionNames(question)
  for (const [at, name] of names.entries()) {
    if (names.indexOf(name) === at) continue
    report('duplicate-option', `${name} stands twice`, ['options', at])
  }
  if (options.every((option) => typeof option !== 'string')) {
    report('dead-end', 'no option may be open: each hangs on a rule', ['options'])
  }
}

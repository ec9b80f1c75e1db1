/**
 * Who may need an answer, for `read_by` in a flow: a rule that decides with it, a paper that prints it,
 * or a person who looks at it. A question nobody reads is not asked. That another
 * answer makes a difference to whoever is named is tested with whole piles.
 */
export const readers = {
  heat: 'rule',
  grade: 'rule',
  panels: 'rule',
  layout: 'rule',
  tally: 'rule',
  picture: 'rule',
  estimate: 'paper',
  checklist: 'paper',
  staff: 'person',
} as const satisfies Record<string, 'rule' | 'paper' | 'person'>

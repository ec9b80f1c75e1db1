type Verb = (given: readonly string[]) => Promise<number>

/**
 * What the command line can do; each verb resolves to its exit code. A verb's own code is loaded when it
 * is called: reading a label needs no server, and waits for none.
 */
export const verbs: Readonly<Record<string, Verb>> = {
  serve: async () => (await import('./serve.ts')).serveVerb(),
  'read-label': async (given) => (await import('./read-label.ts')).readLabelVerb(given),
  grade: async (given) => (await import('./grade.ts')).gradeVerb(given),
  'check-flows': async (given) => (await import('./check-flows.ts')).checkFlowsVerb(given),
  'read-words': async (given) => (await import('./read-words.ts')).readWordsVerb(given),
  look: async (given) => (await import('./look.ts')).lookVerb(given),
  why: async (given) => (await import('./why.ts')).whyVerb(given),
  sources: async (given) => (await import('./sources.ts')).sourcesVerb(given),
  cut: async (given) => (await import('./cut.ts')).cutVerb(given),
  plan: async (given) => (await import('./plan.ts')).planVerb(given),
  place: async (given) => (await import('./place.ts')).placeVerb(given),
  'draw-flows': async (given) => (await import('./draw-flows.ts')).drawFlowsVerb(given),
  'try-flows': async (given) => (await import('./try-flows.ts')).tryFlowsVerb(given),
  backup: async (given) => (await import('./backup.ts')).backupVerb(given),
  restore: async (given) => (await import('./restore.ts')).restoreVerb(given),
  move: async (given) => (await import('./move.ts')).moveVerb(given),
  purge: async (given) => (await import('./purge.ts')).purgeVerb(given),
  account: async (given) => (await import('./account.ts')).accountVerb(given),
}

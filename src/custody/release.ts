/** An act of letting a garment be cut: somebody asks, somebody else releases. */
export interface ReleaseAct {
  readonly seq: number
  readonly kind: 'ask' | 'release'
  /** The account's id. */
  readonly who: string
}

/** What stands of them. */
export interface Release<A extends ReleaseAct = ReleaseAct> {
  readonly asked: A | null
  readonly released: A | null
}

/**
 * What the acts of one garment that were not taken back come to. A release counts after what it answers, and only
 * by somebody else than who asked.
 */
export function releaseOf<A extends ReleaseAct>(acts: readonly A[]): Release<A> {
  const asked = acts.findLast(({ kind }) => kind === 'ask') ?? null
  const released =
    (asked &&
      acts.findLast(
        ({ kind, seq, who }) => kind === 'release' && seq > asked.seq && who !== asked.who,
      )) ??
    null
  return { asked, released }
}

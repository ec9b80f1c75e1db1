import type { Choice } from './view-what-if.ts'

/** Where a garment may go in the quilt, as staff said, and the form to say it otherwise. */
export interface RolesForm {
  readonly n: number
  /** "Parts of Blue flannel". */
  readonly title: string
  /** "In any part", "main pieces alone. Marta, 12 Mar, 14:03". */
  readonly standing: string
  readonly postTo: string
  readonly csrf: string
  /** When what stands was said; 0: nothing was. */
  readonly seen: number
  readonly choices: readonly Choice[]
  readonly checked: readonly string[]
}

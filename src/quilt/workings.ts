/** The ways in which the quantity of a line is counted; each has its sentence in the owner's words. */
export const workingCodes = [
  'pieces',
  'pieces-planned',
  'piecing',
  'area',
  'edge',
  'roll-rough',
  'roll',
  'top-up-rough',
  'cloth',
  'backing',
  'batting',
  'batting-joined',
  'binding',
  'thread',
  'post-there',
  'post-back',
] as const

export type WorkingCode = (typeof workingCodes)[number]

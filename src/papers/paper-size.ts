/** Sheets of paper by their width and height, mm: Letter is size A of ANSI/ASME Y14.1, A4 is ISO 216. */
export const papers = {
  letter: { w: 215.9, h: 279.4 },
  a4: { w: 210, h: 297 },
} as const

export type PaperName = keyof typeof papers

export const paperNames = Object.keys(papers) as [PaperName, ...PaperName[]]

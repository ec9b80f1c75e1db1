import type { Item } from './items.ts'

const degreeWords = /^(?:[cf]$|celsius|deg|grad|grau|grá|stop|stup|derec|°|度|도)/i

/** "Grad", "degrees", "C": what stands behind a temperature. */
export const isDegreeWord = ({ raw }: Item): boolean => degreeWords.test(raw)

import type { Language } from '../../words/words.ts'
import type { Link } from '../chat/view.ts'
import { deskPaths } from './paths.ts'

const names = ['tags', 'tickets', 'quilting', 'care', 'keepsake'] as const

/** A pile's papers as pages, each of which leads to its PDF. */
export const sheetLinks = (number: number, { say }: Language): Link[] =>
  names.map((name) => ({
    label: say(`printed.sheets.${name}`),
    href: deskPaths.paper(number, name),
  }))

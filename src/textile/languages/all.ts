import { czech } from './cs.ts'
import { danish } from './da.ts'
import { german } from './de.ts'
import { english } from './en.ts'
import { spanish } from './es.ts'
import { french } from './fr.ts'
import { italian } from './it.ts'
import { japanese } from './ja.ts'
import { korean } from './ko.ts'
import { dutch } from './nl.ts'
import { polish } from './pl.ts'
import { portuguese } from './pt.ts'
import { romanian } from './ro.ts'
import { swedish } from './sv.ts'
import { turkish } from './tr.ts'
import type { LabelLanguage } from './types.ts'
import { chinese } from './zh.ts'

/** English first: where a word is the same in several languages the earlier one is taken. */
export const labelLanguages: readonly LabelLanguage[] = [
  english,
  french,
  spanish,
  german,
  italian,
  portuguese,
  dutch,
  polish,
  swedish,
  danish,
  romanian,
  czech,
  turkish,
  chinese,
  japanese,
  korean,
]

import { Failure } from '../base/failures.ts'
import { type Finding, Unreadable } from '../flow/finding.ts'

/** What a source's reading finds wrong; its value where it can be read. */
export function tried<T>(read: () => T): { value: T | null; findings: readonly Finding[] } {
  try {
    return { value: read(), findings: [] }
  } catch (error) {
    if (error instanceof Unreadable) return { value: null, findings: error.findings }
    throw error
  }
}

/** The same of files whose own rooms read them: these throw at the first thing that is wrong. */
export function readFindings(read: () => unknown): Finding[] {
  try {
    read()
    return []
  } catch (error) {
    if (!(error instanceof Failure)) throw error
    const { file, line, why } = error.details
    return [{ file: String(file), line: Number(line), rule: 'grammar', message: String(why) }]
  }
}

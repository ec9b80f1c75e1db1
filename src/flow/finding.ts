import { Failure } from '../base/failures.ts'

/** Something wrong in a file an owner wrote. `rule` is the name of the check; lines count from 1. */
export interface Finding {
  readonly file: string
  readonly line: number
  readonly rule: string
  readonly message: string
  /** A gap in words, or facts with what led to them. */
  readonly example?: string | object
}

export type Path = readonly (string | number)[]

/** Where a value came from, so that a finding can name a file and a line. */
export interface Where {
  readonly file: string
  readonly lineOf: (path: Path) => number
}

/** For values that stand in no file, such as a flow kept by its hash. */
export const nowhere: Where = { file: 'stored', lineOf: () => 1 }

/** Thrown where a flow or a table cannot be read. `findings` holds everything that was found. */
export class Unreadable extends Failure {
  readonly findings: readonly Finding[]

  constructor(findings: readonly Finding[]) {
    const [first] = findings
    super('flows_invalid', first ? { file: first.file, line: first.line, why: first.message } : {})
    this.findings = findings
  }
}

/** A finding about a whole file, shown at its first line. */
export const finding = (
  file: string,
  rule: string,
  message: string,
  example?: string,
): Finding => ({
  file,
  line: 1,
  rule,
  message,
  ...(example !== undefined && { example }),
})

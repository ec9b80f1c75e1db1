import { pdfOf } from '../../src/papers/pdf/make.ts'
import type { Printer } from '../../src/web/printer.ts'

/** A printer without a thread: tests of pages start none. */
export const printingHere: Printer = { print: pdfOf, close: async () => {} }

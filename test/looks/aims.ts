import { faults } from './look.ts'
import type { Score, Spread } from './score.ts'

/** A figure of a score and what it is to be: at least or at most so much. */
export interface Aim {
  readonly name: string
  /** Null where no photo was asked for it. */
  readonly value: number | null
  readonly atLeast?: number
  readonly atMost?: number
}

/** The aims that readings of garment photos are held to; shares and errors from 0 to 1. */
export function aimsOf(score: Score): Aim[] {
  const { print, maskIou, graphic, colour, value, fitness, sheet, size } = score
  const sizes = (name: string, errors: Spread | null, median: number, p90: number): Aim[] => [
    { name: `size error by ${name}, median`, value: errors?.median ?? null, atMost: median },
    { name: `size error by ${name}, 90th percentile`, value: errors?.p90 ?? null, atMost: p90 },
  ]
  return [
    { name: 'print class', value: print.right, atLeast: 0.94 },
    { name: 'print class, the worst', value: print.worst, atLeast: 0.88 },
    { name: 'print class where sure', value: print.rightWhereSure, atLeast: 0.985 },
    { name: 'sure of the print', value: print.sure, atLeast: 0.85 },
    { name: 'mask, mean common area', value: maskIou, atLeast: 0.95 },
    { name: 'graphic, median common area', value: graphic?.medianIou ?? null, atLeast: 0.85 },
    { name: 'graphic, half in common', value: graphic?.half ?? null, atLeast: 0.9 },
    { name: 'dominant colour, median CIEDE2000', value: colour?.median ?? null, atMost: 1.5 },
    { name: 'dominant colour, 90th percentile', value: colour?.p90 ?? null, atMost: 5 },
    { name: 'value class', value, atLeast: 0.96 },
    ...faults.flatMap((fault): Aim[] => [
      { name: `${fault} caught`, value: fitness[fault].caught, atLeast: 0.9 },
      { name: `${fault} false alarms`, value: fitness[fault].falseAlarms, atMost: 0.03 },
    ]),
    { name: 'sheet found where it contrasts', value: sheet.found, atLeast: 0.9 },
    { name: 'wrong sheets used', value: sheet.wrong.length, atMost: 0 },
    ...sizes('paper', size.paper, 0.01, 0.03),
    ...sizes('card', size.card, 0.02, 0.05),
  ]
}

/** Whether it is what it is to be; a figure that was asked of no photo is not. */
export const holds = ({
  value,
  atLeast = Number.NEGATIVE_INFINITY,
  atMost = Number.POSITIVE_INFINITY,
}: Aim): boolean => value !== null && value >= atLeast && value <= atMost

export function lineOf(aim: Aim): string {
  const { name, value, atLeast, atMost } = aim
  const bound = atLeast !== undefined ? `at least ${atLeast}` : `at most ${atMost}`
  const told = value === null ? 'none' : String(Math.round(value * 10000) / 10000)
  return `${holds(aim) ? ' ' : '!'} ${name.padEnd(40)} ${told.padStart(8)}   ${bound}`
}

/** Grid of the workshop: lengths that are cut are whole quarter inches. */
export const quartersPerInch = 4

export const inchesPerFoot = 12
export const inchesPerYard = 36
/** Exact since the yard and pound agreement of 1959. */
export const metresPerInch = 0.0254

const fractions = ['', '1/4', '1/2', '3/4']

/** 12.5 → "12 1/2"; rounded to the nearest quarter inch. */
export function inchWords(inches: number): string {
  const quarters = Math.round(inches * quartersPerInch)
  const whole = Math.floor(quarters / quartersPerInch)
  const part = fractions[quarters % quartersPerInch]!
  return part === '' ? String(whole) : whole === 0 ? part : `${whole} ${part}`
}

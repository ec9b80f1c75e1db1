import type { Glyph } from './setting.ts'

const outlines: Readonly<Record<Glyph['glyph'], string>> = {
  tub: '<path d="M3 8 L7 26 H29 L33 8"/><path d="M3 11 q5 -4 10 0 t10 0 t10 0"/>',
  triangle: '<path d="M18 5 L33 29 H3 Z"/>',
  square: '<rect x="5" y="5" width="26" height="26"/><circle cx="18" cy="18" r="10"/>',
  iron: '<path d="M3 28 H33 L29 11 H13"/><path d="M3 28 Q5 17 17 17 H30"/>',
  circle: '<circle cx="18" cy="18" r="13"/>',
}

/** A care picture of plain strokes, as high as 36 units. */
export function drawGlyph({ glyph, crossed, dots }: Glyph): string {
  const cross = crossed ? '<path d="M4 4 L32 32 M32 4 L4 32"/>' : ''
  const marks = Array.from(
    { length: dots },
    (_, at) => `<circle class="dot" cx="${18 + (at - (dots - 1) / 2) * 6}" cy="23" r="1.8"/>`,
  ).join('')
  return `<svg viewBox="0 0 36 36">${outlines[glyph]}${marks}${cross}</svg>`
}

import { between, oneOf, share, whole } from './chance.ts'

/** A picture of a few shapes, and at times a word, within a unit square. */
export function motif(cols: readonly string[]): string {
  let g = ''
  const k = whole(2, 6)
  for (let i = 0; i < k; i++) {
    const c = oneOf(cols),
      x = between(-0.3, 0.3),
      y = between(-0.3, 0.3),
      r = between(0.12, 0.3)
    const t = whole(0, 4)
    if (t === 0) g += `<circle cx="${x}" cy="${y}" r="${r * 0.8}" fill="${c}"/>`
    else if (t === 1)
      g += `<rect x="${x - r}" y="${y - r * 0.7}" width="${2 * r}" height="${1.4 * r}" fill="${c}" transform="rotate(${between(0, 90)} ${x} ${y})"/>`
    else if (t === 2) {
      let p = ''
      const n = whole(3, 8)
      for (let q = 0; q < 2 * n; q++) {
        const a = (Math.PI * q) / n,
          rr = q % 2 ? r * 0.45 : r
        p += `${x + rr * Math.cos(a)},${y + rr * Math.sin(a)} `
      }
      g += `<polygon points="${p}" fill="${c}"/>`
    } else if (t === 3)
      g += `<ellipse cx="${x}" cy="${y}" rx="${r}" ry="${r * 0.5}" fill="none" stroke="${c}" stroke-width="${between(0.03, 0.08)}"/>`
    else
      g += `<path d="M${x - r} ${y} q${r} ${-r * 2} ${2 * r} 0 t${r * 0.2} ${r}" stroke="${c}" stroke-width="${between(0.03, 0.09)}" fill="none"/>`
  }
  if (share() < 0.4)
    g += `<text x="0" y="${between(0.3, 0.48)}" font-size="${between(0.12, 0.22)}" font-family="sans-serif" font-weight="bold" text-anchor="middle" textLength="${between(0.7, 0.95)}" lengthAdjust="spacingAndGlyphs" fill="${oneOf(cols)}">${oneOf(['RIVERSIDE', 'SUMMER 98', 'LAKE CAMP', 'HELLO', 'TEAM 12', 'OAK HILL'])}</text>`
  return g
}

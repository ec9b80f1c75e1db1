import { anyColour, between, oneOf, share, whole } from './chance.ts'
import { motif } from './motif.ts'

/** What is printed on a garment, in its own measure, as SVG. */
export function printOf(cls: string, kind: string, cols: readonly string[]): string {
  let print = ''
  if (cls === 'single') {
    const small = share() < 0.15
    const w = small ? between(0.06, 0.1) : between(0.18, 0.4),
      hh = w * between(0.5, 1.3),
      x = small ? between(0.05, 0.1) : between(-0.02, 0.02),
      y = kind === 'pants' ? between(-0.3, 0.2) : small ? -0.22 : between(-0.2, 0.1)
    const px = kind === 'pants' ? 0.13 : x,
      sw = kind === 'pants' ? Math.min(w, 0.14) : w
    print = `<g transform="translate(${px} ${y}) scale(${sw} ${hh})">${motif(cols)}</g>`
  } else if (cls === 'allover') {
    const pitch = between(0.05, 0.16)
    const m = [motif(cols), motif(cols)]
    const jit = share() < 0.5 ? 0.3 : 0
    let k = 0
    for (let y = -0.6; y < 0.6; y += pitch) {
      k++
      for (let x = -0.6 + ((k % 2) * pitch) / 2; x < 0.6; x += pitch)
        print += `<g transform="translate(${x + between(-jit, jit) * pitch} ${y + between(-jit, jit) * pitch}) rotate(${jit ? between(0, 360) : 0}) scale(${pitch * between(0.6, 0.9)})">${oneOf(m)}</g>`
    }
  } else if (cls === 'stripe-check') {
    const pitch = between(0.02, 0.14),
      t = whole(0, 3),
      ang = t === 3 ? 0 : share() < 0.1 ? 45 : 0
    const f = between(0.15, 0.6),
      c1 = oneOf(cols),
      c2 = oneOf(cols)
    let g = ''
    for (let x = -0.9; x < 0.9; x += pitch) {
      if (t !== 1)
        g += `<rect x="-1" y="${x}" width="2" height="${pitch * f}" fill="${c1}" opacity="${t >= 2 ? 0.6 : 1}"/>`
      if (t >= 1)
        g += `<rect y="-1" x="${x}" height="2" width="${pitch * f}" fill="${c2}" opacity="${t >= 2 ? 0.6 : 1}"/>`
    }
    print = `<g transform="rotate(${ang})">${g}</g>`
  }
  return print
}

/** Collar, seams, placket, pocket: what a garment has that is no print. */
export function seamsOf(kind: string): string {
  let feat = ''
  const dk = `stroke="black" stroke-opacity="${between(0.12, 0.4)}" fill="none" stroke-width=".004"`
  if (kind === 'pants')
    feat += `<path d="M0 -.5V-.1M-.24 -.45H.24" ${dk}/><path d="M.05 -.44q.05 .1 .16 .1M-.05 -.44q-.05 .1 -.16 .1" ${dk}/>`
  else {
    feat += `<ellipse cx="0" cy="-.44" rx=".1" ry=".05" fill="black" fill-opacity="${between(0.1, 0.4)}"/><path d="M-.27 .45H.27M.22 -.42Q.26 -.3 .27 -.18M-.22 -.42Q-.26 -.3 -.27 -.18" ${dk}/>`
  }
  if (share() < 0.2) {
    feat += `<path d="M-.015 -.4V.5M.02 -.4V.5" ${dk}/>`
    const bc = anyColour()
    for (let y = -0.35; y < 0.4; y += 0.12)
      feat += `<circle cx="0" cy="${y}" r=".009" fill="${bc}"/>`
  }
  if (share() < 0.15 && kind !== 'pants')
    feat += `<path d="M.06 -.22h.12v.12q-.06 .03 -.12 0z" ${dk}/>`
  if (kind === 'hood')
    feat += `<path d="M-.16 .12L-.12 .1H.12L.16 .12L.2 .32H-.2Z" ${dk}/><path d="M-.04 -.36V-.2M.04 -.36V-.22" stroke="white" stroke-width=".008"/>`
  return feat
}

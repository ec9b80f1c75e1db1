import { anyColour, between, coloured, share, whole } from './chance.ts'

/** What a garment lies on, as SVG; `grain` says that it is rough as a carpet is. */
export function groundOf(W: number, H: number): { readonly gsvg: string; readonly grain: boolean } {
  const gt = whole(0, 5)
  const g1 =
    share() < 0.5 ? coloured(between(15, 45), between(5, 50), between(25, 90)) : anyColour()
  const g2 =
    share() < 0.5 ? coloured(between(15, 45), between(5, 50), between(25, 90)) : anyColour()
  let gsvg = `<rect width="${W}" height="${H}" fill="${g1}"/>`
  if (gt === 1) {
    const pw = between(60, 200),
      v = share() < 0.5
    for (let x = 0; x < 1300; x += pw) {
      const o = between(0, 0.25)
      gsvg += v
        ? `<rect x="${x}" width="${pw - 3}" height="${H}" fill="black" opacity="${o}"/><rect x="${x + pw - 3}" width="3" height="${H}" fill="black" opacity=".5"/>`
        : `<rect y="${x}" height="${pw - 3}" width="${W}" fill="black" opacity="${o}"/><rect y="${x + pw - 3}" height="3" width="${W}" fill="black" opacity=".5"/>`
      for (let q = 0; q < 12; q++) {
        const o2 = between(0.03, 0.15),
          a = x + between(0, pw),
          b = a + between(-6, 6)
        gsvg += v
          ? `<path d="M${a} 0Q${b} ${H / 2} ${a} ${H}" stroke="black" stroke-opacity="${o2}" fill="none"/>`
          : `<path d="M0 ${a}Q${W / 2} ${b} ${W} ${a}" stroke="black" stroke-opacity="${o2}" fill="none"/>`
      }
    }
  }
  if (gt === 2) {
    const pw = between(50, 160),
      f = between(0.2, 0.5)
    for (let x = 0; x < 1300; x += pw)
      gsvg += `<rect x="${x}" width="${pw * f}" height="${H}" fill="${g2}" opacity=".4"/><rect y="${x}" height="${pw * f}" width="${W}" fill="${g2}" opacity=".4"/>`
  }
  if (gt === 3) {
    const pw = between(120, 300)
    for (let x = 0; x < 1300; x += pw)
      gsvg += `<path d="M${x} 0V${H}M0 ${x}H${W}" stroke="black" stroke-opacity=".3" stroke-width="4"/>`
  }
  if (gt === 4 && share() < 0.5)
    gsvg += `<rect y="${H * between(0.7, 0.85)}" width="${W}" height="${H}" fill="${g2}"/>`
  return { gsvg, grain: gt === 5 }
}

import type { Chance } from '../help/chance.ts'
import { bend, circle, corner, type Mark, type Node, pathOf } from './outline.ts'

export type HemKind = 'stitched' | 'rib' | 'curved' | 'snaps'

/** The lower edge of a top, from its right to its left; mm. */
export function hemOf(
  chance: Chance,
  kind: HemKind,
  { chest, length, hem }: { readonly chest: number; readonly length: number; readonly hem: number },
): { readonly nodes: readonly Node[]; readonly marks: readonly Mark[] } {
  const sag = () => chance.real(-8, 8)
  if (kind === 'snaps') {
    const crotch = chest * 0.2
    const leg = length * 0.76
    return {
      nodes: [
        corner(hem, leg),
        bend(hem * 0.62, leg + (length - leg) * 0.45),
        corner(crotch, length - 8),
        bend(0, length),
        corner(-crotch, length - 8),
        bend(-hem * 0.62, leg + (length - leg) * 0.45),
        corner(-hem, leg),
      ],
      marks: [
        {
          path: pathOf(
            [
              bend(hem - 3, leg - 12),
              bend(hem * 0.55, leg + (length - leg) * 0.32),
              bend(crotch - 4, length - 26),
            ],
            false,
          ),
          ink: 'stitch',
          wide: 2,
        },
        {
          path: pathOf(
            [
              bend(-hem + 3, leg - 12),
              bend(-hem * 0.55, leg + (length - leg) * 0.32),
              bend(-crotch + 4, length - 26),
            ],
            false,
          ),
          ink: 'stitch',
          wide: 2,
        },
        ...[-0.55, 0, 0.55].map(
          (at): Mark => ({ path: circle(at * crotch, length - 14, 4.5), ink: 'metal' }),
        ),
      ],
    }
  }
  if (kind === 'curved') {
    const rise = chance.real(30, 80)
    return {
      nodes: [
        corner(hem, length - rise),
        bend(hem * 0.6, length - rise * 0.2),
        bend(0, length + sag() / 2),
        bend(-hem * 0.6, length - rise * 0.2),
        corner(-hem, length - rise),
      ],
      marks: [
        {
          path: pathOf(
            [
              bend(hem - 2, length - rise - 9),
              bend(hem * 0.6, length - rise * 0.2 - 9),
              bend(0, length - 9),
              bend(-hem * 0.6, length - rise * 0.2 - 9),
              bend(-hem + 2, length - rise - 9),
            ],
            false,
          ),
          ink: 'stitch',
          wide: 1.6,
        },
      ],
    }
  }
  const band = kind === 'rib' ? chance.real(45, 80) : 22
  const low = sag()
  const line = (from: number, half: number): Node[] => [
    bend(-half, from),
    bend(0, from + low),
    bend(half, from),
  ]
  if (kind === 'stitched')
    return {
      nodes: [corner(hem, length), bend(0, length + low), corner(-hem, length)],
      marks: [{ path: pathOf(line(length - band, hem), false), ink: 'stitch', wide: 1.6 }],
    }
  // The band draws the cloth in, which bags above it; what is drawn beyond the garment is not seen.
  const bag = chance.real(2, 16)
  return {
    nodes: [
      bend(hem + bag, length - band - 22),
      corner(hem, length),
      bend(0, length + low),
      corner(-hem, length),
      bend(-hem - bag, length - band - 22),
    ],
    marks: [
      {
        path: pathOf([...line(length - band, hem + 25), ...line(length + 6, hem + 12).reverse()]),
        ink: 'rib',
      },
      { path: pathOf(line(length - band, hem + 14), false), ink: 'seam', wide: 2.4 },
    ],
  }
}

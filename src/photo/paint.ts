import { Failure } from '../base/failures.ts'
import type { Painted, PaintJob } from './painter.ts'
import { type TurnsOptions, takeTurns } from './turns.ts'
import { startWorker } from './worker-process.ts'

/** Our own drawings as PNGs, each made once. */
export interface Paints {
  /**
   * The drawing of that name as a PNG; `draw` is asked for its SVG where none is kept. What the drawing
   * shows must follow from the name. Throws `busy` when too many wait, `picture_failed` where it is too
   * large, no drawing, or its process died of it or was slow.
   */
  paint(name: string, draw: () => Promise<string>): Promise<Uint8Array>
  /** Ends the process; what still waits is `busy`. */
  close(): Promise<void>
}

export interface PaintOptions extends Partial<TurnsOptions<PaintJob, Painted>> {
  /** How much is kept, bytes; what was asked for longest ago goes first. */
  readonly keptBytes?: number
}

const pixelsAcross = 1200

/** Cloth of 300 photos within it, however little the JPEG could make them. */
const mostSvgBytes = 24 * 1024 * 1024

export function openPaints(options: PaintOptions = {}): Paints {
  const { keptBytes = 48 * 1024 * 1024, ...others } = options
  const start = () => startWorker<PaintJob, Painted>('painter')
  const turns = takeTurns<PaintJob, Painted>({ most: 8, limitMs: 20_000, start, ...others })
  const kept = new Map<string, Uint8Array>()
  const underWay = new Map<string, Promise<Uint8Array>>()

  function keep(name: string, png: Uint8Array): void {
    kept.delete(name)
    kept.set(name, png)
    let bytes = [...kept.values()].reduce((sum, one) => sum + one.byteLength, 0)
    for (const [oldest, one] of kept) {
      if (bytes <= keptBytes) return
      kept.delete(oldest)
      bytes -= one.byteLength
    }
  }

  async function make(draw: () => Promise<string>): Promise<Uint8Array> {
    const svg = await draw()
    if (Buffer.byteLength(svg) > mostSvgBytes) throw new Failure('picture_failed')
    const painted = await turns.ask({ svg, width: pixelsAcross })
    if (!painted) throw new Failure('picture_failed')
    return painted.png
  }

  async function begin(name: string, draw: () => Promise<string>): Promise<Uint8Array> {
    const making = make(draw)
    underWay.set(name, making)
    try {
      return await making
    } finally {
      underWay.delete(name)
    }
  }

  return {
    async paint(name, draw) {
      const png = kept.get(name) ?? (await (underWay.get(name) ?? begin(name, draw)))
      keep(name, png)
      return png
    },
    close: () => turns.close(),
  }
}

/** The process that `paint.ts` forks: takes one of our own drawings at a time and answers with its PNG. */
import sharp from 'sharp'

export interface PaintJob {
  readonly svg: string
  /** Pixels across. */
  readonly width: number
}

/** Null: it is no drawing, or larger than may be painted. */
export type Painted = { readonly png: Uint8Array } | null

/** No quilt is so long that it has more at the width we paint. */
const mostPixels = 8_000_000

sharp.cache(false)
sharp.concurrency(1)
// Nothing but drawings is ever read here; a drawing in memory reaches no file and no address.
sharp.block({ operation: ['VipsForeignLoad'] })
sharp.unblock({ operation: ['VipsForeignLoadSvgBuffer'] })

async function paint({ svg, width }: PaintJob): Promise<Painted> {
  try {
    const bytes = Buffer.from(svg)
    const {
      width: own,
      height,
      format,
    } = await sharp(bytes, { limitInputPixels: false }).metadata()
    if (format !== 'svg' || (width / own) * height * width > mostPixels) return null
    const png = await sharp(bytes, {
      density: (72 * width) / own,
      limitInputPixels: mostPixels * 2,
    })
      .resize({ width })
      .flatten({ background: '#fff' })
      .png({ compressionLevel: 9 })
      .toBuffer()
    return { png }
  } catch {
    return null
  }
}

process.on('message', async (job: PaintJob) => process.send?.(await paint(job)))
// The server decides when to stop; a key press in its terminal reaches this process too.
process.on('SIGINT', () => {})
process.on('disconnect', () => process.exit())

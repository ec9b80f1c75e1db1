import sharp from 'sharp'

const side = 480
const gap = 8
const columns = 6
const rows = 4

/** Photos from all over the set as they are shown, on one sheet; its path. */
export async function contactSheet(files: readonly string[], path: string): Promise<string> {
  const count = Math.min(files.length, columns * rows)
  const shown = Array.from(
    { length: count },
    (_, at) => files[Math.floor((at * files.length) / count)]!,
  )
  const laid = await Promise.all(
    shown.map(async (file, at) => ({
      input: await sharp(file).autoOrient().resize(side, side, { fit: 'inside' }).toBuffer(),
      left: gap + (at % columns) * (side + gap),
      top: gap + Math.floor(at / columns) * (side + gap),
    })),
  )
  const size = { width: columns * (side + gap) + gap, height: rows * (side + gap) + gap }
  await sharp({ create: { ...size, channels: 3, background: '#8a8a8a' } })
    .composite(laid)
    .png()
    .toFile(path)
  return path
}

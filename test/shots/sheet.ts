import sharp from 'sharp'

const gap = 16
const tall = 1720
/** So wide that a sheet can still be read when it is shown whole. */
const broad = 2000
/** A wide page is shown at half its size. */
const widest = 640

interface Piece {
  readonly image: Buffer
  readonly width: number
  readonly height: number
}

/** Cuts a page that is taller than a sheet into pieces that stand side by side. */
async function piecesOf(file: string): Promise<Piece[]> {
  const shot = sharp(file)
  const { width: full } = await shot.metadata()
  const { data, info } = await shot
    .resize({ width: Math.min(full, widest) })
    .png()
    .toBuffer({ resolveWithObject: true })
  const pieces: Piece[] = []
  for (let top = 0; top < info.height; top += tall) {
    const height = Math.min(tall, info.height - top)
    const image = await sharp(data).extract({ left: 0, top, width: info.width, height }).toBuffer()
    pieces.push({ image, width: info.width, height })
  }
  return pieces
}

/** Pieces in columns from left to right, so many columns to a sheet. */
function inColumns(pieces: readonly Piece[]): Piece[][] {
  const filled: Piece[][] = []
  let room = 0
  for (const piece of pieces) {
    if (piece.height > room) {
      filled.push([])
      room = tall
    }
    filled.at(-1)!.push(piece)
    room -= piece.height + gap
  }
  return filled
}

/** Lays pictures of pages out on contact sheets, `<stem>-<n>.png`; their paths. */
export async function contactSheets(files: readonly string[], stem: string): Promise<string[]> {
  const all = inColumns((await Promise.all(files.map(piecesOf))).flat())
  const step = Math.max(...all.flat().map(({ width }) => width)) + gap
  const columns = Math.floor(broad / step)
  const sheets: string[] = []
  for (let at = 0; at < all.length; at += columns) {
    const some = all.slice(at, at + columns)
    const laid = some.flatMap((column, x) => {
      let top = gap
      return column.map(({ image, height }) => {
        const place = { input: image, left: gap + x * step, top }
        top += height + gap
        return place
      })
    })
    const path = `${stem}-${sheets.length + 1}.png`
    const size = { width: some.length * step + gap, height: tall + 2 * gap }
    await sharp({ create: { ...size, channels: 3, background: '#8a8a8a' } })
      .composite(laid)
      .png()
      .toFile(path)
    sheets.push(path)
  }
  return sheets
}

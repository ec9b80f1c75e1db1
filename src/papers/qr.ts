import { create, type QRCodeErrorCorrectionLevel } from 'qrcode'

/** A QR code (ISO/IEC 18004): rows of squares, true where one is dark; without the quiet zone around it. */
export interface QrCode {
  readonly rows: readonly (readonly boolean[])[]
}

/** As wide as so many squares, light, on each side. ISO/IEC 18004, for model 2 symbols. */
export const quietSquares = 4

const coded = (text: string, level: QRCodeErrorCorrectionLevel): QrCode => {
  const { modules } = create(text, { errorCorrectionLevel: level })
  return {
    rows: Array.from({ length: modules.size }, (_, y) =>
      Array.from({ length: modules.size }, (_, x) => modules.get(y, x) === 1),
    ),
  }
}

/** A text as a QR code: with the level M of error correction, or L where M has squares too many. */
export function qrOf(text: string): QrCode {
  const medium = coded(text, 'M')
  return medium.rows.length > roomy ? coded(text, 'L') : medium
}

/** So many squares of 15 mm are three dots or more of 200 to the inch each. */
const roomy = 37

/** A square is no smaller, mm: three dots of 200 to the inch. */
const leastSquare = (3 * 25.4) / 200

/** How wide a code is printed that should be `side` wide, mm: more where its squares would be too small. */
export const sideOf = ({ rows }: QrCode, side: number): number =>
  Math.max(side, rows.length * leastSquare)

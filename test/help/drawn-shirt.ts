import sharp from 'sharp'

const drawing = (width: number, height: number) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 642 482">
    <linearGradient id="floor" x2="1" y2="1"><stop stop-color="#e9e2d4"/><stop offset="1" stop-color="#c9bda6"/></linearGradient>
    <rect width="642" height="482" fill="url(#floor)"/>
    <path d="M230 60 L130 110 L80 220 L150 250 L180 200 L180 440 L462 440 L462 200 L492 250 L562 220 L512 110 L412 60 Q321 120 230 60 Z" fill="#2f5597" stroke="#233f70" stroke-width="4"/>
    <circle cx="321" cy="240" r="70" fill="#d8443a"/>
    <path d="M321 190 L365 270 L277 270 Z" fill="#f4d35e"/>
    <rect x="20" y="20" width="60" height="60" fill="#2e8b57"/>
  </svg>`

/** A shirt with a picture on it, drawn for tests: no corner is like another, so a wrong turn shows. RGB, row by row. */
export const drawnShirt = (width: number, height: number): Promise<Buffer> =>
  sharp(Buffer.from(drawing(width, height)))
    .flatten({ background: '#fff' })
    .removeAlpha()
    .raw()
    .toBuffer()

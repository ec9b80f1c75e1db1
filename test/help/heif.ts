/** Parts of an ISO base media file (ISO/IEC 14496-12) that holds pictures (ISO/IEC 23008-12), to take apart and put together. */

const number = (bytes: number, value: number): Buffer => {
  const out = Buffer.alloc(bytes)
  out.writeUIntBE(value, 0, bytes)
  return out
}

export const box = (name: string, ...parts: readonly Uint8Array[]): Buffer => {
  const body = Buffer.concat(parts)
  return Buffer.concat([number(4, body.length + 8), Buffer.from(name, 'latin1'), body])
}

const fullBox = (name: string, version: number, flags: number, ...parts: readonly Uint8Array[]) =>
  box(name, number(1, version), number(3, flags), ...parts)

/** `ispe`: how large a picture says it is. */
export const sizeBox = (width: number, height: number): Buffer =>
  fullBox('ispe', 0, 0, number(4, width), number(4, height))

/** `irot`: quarter turns against the clock. */
export const turnBox = (quarters: number): Buffer => box('irot', number(1, quarters))

/** `imir`: 0 exchanges top and bottom, 1 left and right. */
export const mirrorBox = (mode: 0 | 1): Buffer => box('imir', number(1, mode))

/** `colr` with an ICC profile. */
export const profileBox = (icc: Uint8Array): Buffer => box('colr', Buffer.from('prof'), icc)

/** The payload of a `grid` of pictures, row by row, cut to a size. */
export const gridOf = (rows: number, columns: number, width: number, height: number): Buffer =>
  Buffer.concat([
    number(1, 0),
    number(1, 1),
    number(1, rows - 1),
    number(1, columns - 1),
    number(4, width),
    number(4, height),
  ])

/** An Exif item's payload (ISO/IEC 23008-12, A.2.1) that says nothing but an orientation. */
export const exifOf = (orientation: number): Buffer =>
  Buffer.concat([
    number(4, 0),
    Buffer.from('MM\0*\0\0\0\b\0\x01\x01\x12\0\x03\0\0\0\x01', 'latin1'),
    number(2, orientation),
    Buffer.from('\0\0\0\0\0\0', 'latin1'),
  ])

export interface Item {
  /** `hvc1`, `grid` or `Exif`. */
  readonly type: string
  readonly data: Uint8Array
  /** Property boxes; one that several items have is written once. */
  readonly properties?: readonly Buffer[]
  /** Numbers of items, from 1, that it is made of (`dimg`) or speaks of (`cdsc`). */
  readonly refers?: readonly [kind: 'dimg' | 'cdsc', to: readonly number[]]
  readonly hidden?: boolean
}

export interface HeifOptions {
  /** The number of the primary item, from 1. */
  readonly primary?: number
  readonly brands?: readonly string[]
  /** More boxes at the end of `meta`. */
  readonly more?: readonly Buffer[]
}

/** A file of these items, numbered from 1. */
export function heifOf(
  items: readonly Item[],
  { primary = 1, brands = ['heic', 'mif1', 'heic'], more = [] }: HeifOptions = {},
): Buffer {
  const [major = 'heic', ...compatible] = brands
  const first = box(
    'ftyp',
    Buffer.from(major),
    number(4, 0),
    ...compatible.map((brand) => Buffer.from(brand)),
  )
  const numbered = items.map((item, at) => ({ ...item, id: at + 1 }))
  const properties = [...new Set(numbered.flatMap(({ properties: own = [] }) => own))]
  const associations = numbered.map(({ id, properties: own = [] }) => {
    const listed = own.map((one) => number(1, 0x80 | (properties.indexOf(one) + 1)))
    return Buffer.concat([number(2, id), number(1, own.length), ...listed])
  })
  const metaAt = (offset: number): Buffer => {
    let at = offset
    const places = numbered.map(({ id, data }) => {
      const place = Buffer.concat([
        number(2, id),
        number(2, 0),
        number(2, 1),
        number(4, at),
        number(4, data.length),
      ])
      at += data.length
      return place
    })
    return fullBox(
      'meta',
      0,
      0,
      fullBox('hdlr', 0, 0, number(4, 0), Buffer.from('pict'), Buffer.alloc(13)),
      fullBox('pitm', 0, 0, number(2, primary)),
      fullBox('iloc', 0, 0, number(2, 0x4400), number(2, items.length), ...places),
      fullBox(
        'iinf',
        0,
        0,
        number(2, items.length),
        ...numbered.map(({ id, type, hidden }) =>
          fullBox('infe', 2, hidden ? 1 : 0, number(2, id), number(2, 0), Buffer.from(`${type}\0`)),
        ),
      ),
      fullBox(
        'iref',
        0,
        0,
        ...numbered.flatMap(({ id, refers }) =>
          refers
            ? box(
                refers[0],
                number(2, id),
                number(2, refers[1].length),
                ...refers[1].map((to) => number(2, to)),
              )
            : [],
        ),
      ),
      box(
        'iprp',
        box('ipco', ...properties),
        fullBox('ipma', 0, 0, number(4, items.length), ...associations),
      ),
      ...more,
    )
  }
  const { length } = metaAt(0)
  return Buffer.concat([
    first,
    metaAt(first.length + length + 8),
    box('mdat', ...items.map(({ data }) => data)),
  ])
}

interface Found {
  readonly name: string
  readonly body: Buffer
  /** Header and body. */
  readonly whole: Buffer
}

function boxesIn(bytes: Buffer): Found[] {
  const found: Found[] = []
  for (let at = 0; at + 8 <= bytes.length; ) {
    const length = bytes.readUInt32BE(at)
    const whole = bytes.subarray(at, at + length)
    found.push({ name: whole.toString('latin1', 4, 8), body: whole.subarray(8), whole })
    at += length
  }
  return found
}

const inside = (boxes: readonly Found[], name: string): Buffer =>
  boxes.find((one) => one.name === name)!.body

/** The coded pictures of a file as heif-enc writes it, each with its decoder's settings (`hvcC`) alone. */
export function codedIn(file: Buffer): Item[] {
  const meta = boxesIn(inside(boxesIn(file), 'meta').subarray(4))
  const properties = boxesIn(inside(boxesIn(inside(meta, 'iprp')), 'ipco'))
  const places = inside(meta, 'iloc')
  const links = inside(boxesIn(inside(meta, 'iprp')), 'ipma')
  const hvcCOf = new Map<number, Buffer>()
  for (let n = 0, at = 8; n < links.readUInt32BE(4); n += 1) {
    const [id, count] = [links.readUInt16BE(at), links[at + 2]!]
    for (const link of links.subarray(at + 3, at + 3 + count)) {
      const property = properties[(link & 0x7f) - 1]!
      if (property.name === 'hvcC') hvcCOf.set(id, property.whole)
    }
    at += 3 + count
  }
  if (places[0] !== 0 || places.readUInt16BE(4) !== 0x4440) throw new Error('another kind of iloc')
  return Array.from({ length: places.readUInt16BE(6) }, (_, n) => {
    // Version 0 with one extent: id, reference, where extents are counted from, how many, offset, length.
    const at = 8 + n * 18
    const id = places.readUInt16BE(at)
    const offset = places.readUInt32BE(at + 4) + places.readUInt32BE(at + 10)
    const length = places.readUInt32BE(at + 14)
    return {
      type: 'hvc1',
      data: file.subarray(offset, offset + length),
      properties: [hvcCOf.get(id)!],
    }
  })
}

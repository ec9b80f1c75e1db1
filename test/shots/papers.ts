import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { paperNames } from '../../src/papers/paper-size.ts'
import { drawPdf, readPdf } from '../help/read-pdf.ts'
import type { Story } from '../story/people.ts'

const desk = ['tags', 'tickets', 'quilting', 'care', 'keepsake', 'packing', 'estimate']
const customer = ['packing', 'tags', 'keepsake']
/** Dots to the inch: small words can still be read. */
const dpi = 80

/** Every paper of the story's pile as PDF on Letter and A4, and a picture of each of its sheets; their files. */
export async function photographPapers(
  { owner, customer: theirs, base, pile, number }: Story,
  folder: string,
): Promise<string[]> {
  const at = `${base}/desk/piles/${number}`
  const papers = [
    ...desk.map((name) => ({ by: owner, name, url: `${at}/papers/${name}.pdf` })),
    { by: owner, name: 'bench', url: `${at}/garments/1/bench.pdf` },
    ...customer.map((name) => ({
      by: theirs,
      name: `customer-${name}`,
      url: `${pile}/papers/${name}.pdf`,
    })),
  ]
  mkdirSync(folder, { recursive: true })
  const sheets: string[] = []
  for (const { by, name, url } of papers) {
    for (const paper of paperNames) {
      const response = await by.request.get(`${url}?paper=${paper}`)
      if (!response.ok()) throw new Error(`${url} answers ${response.status()}`)
      const pdf = await response.body()
      const stem = join(folder, `${name}-${paper}`)
      writeFileSync(`${stem}.pdf`, pdf)
      // Reading takes the bytes with it.
      const { pages } = await readPdf(Uint8Array.from(pdf))
      for (const n of pages.keys()) {
        const file = `${stem}-${n + 1}.png`
        const canvas = await drawPdf(Uint8Array.from(pdf), n + 1, dpi)
        writeFileSync(file, canvas.toBuffer('image/png'))
        sheets.push(file)
      }
    }
  }
  return sheets
}

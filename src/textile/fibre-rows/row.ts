export const kadolph = 'Kadolph, Textiles, thermal-property table (from memory, unverified)'
export const general = 'general fibre handbooks (from memory, unverified)'
export const meltingSeen = 'melting point also in a man-made-fibre property table (secondary)'

export interface FibreRow {
  readonly key: string
  /** Generic names of 16 CFR 303.7, several parted by a bar. */
  readonly ftc: string | null
  /** Names of Regulation (EU) 1007/2011, Annex I, several parted by a bar. */
  readonly eu: string | null
  /** Dots of the iron on such a garment's usual label; 0 is the crossed iron. */
  readonly dots: 0 | 1 | 2 | 3
  readonly ironMaxC: 0 | 110 | 150 | 200
  readonly softeningC?: string
  readonly meltingC?: string
  readonly handbookC?: string
  readonly notes: string
  readonly source: string
}

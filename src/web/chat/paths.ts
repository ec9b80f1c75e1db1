/** The customer's addresses. The key is the only thing that opens a pile. */
export const paths = {
  start: '/i',
  pile: (key: string) => `/i/${key}`,
  /** The same, told what the act after that one did to the price. */
  changed: (key: string, since: number) => `/i/${key}?since=${since}`,
  question: (key: string, item: number, question: string) => `/i/${key}/${item}/${question}`,
  /** Posted to: adds, copies, drops. Opened: the page between two garments. */
  garments: (key: string) => `/i/${key}/garments`,
  review: (key: string) => `/i/${key}/review`,
  confirm: (key: string) => `/i/${key}/confirm`,
  keep: (key: string) => `/i/${key}/keep`,
  paper: (key: string) => `/i/${key}/paper`,
  language: (key: string, code: string) => `/i/${key}/language/${code}`,
  photo: (key: string, id: string, size: 'view' | 'thumb' | 'cloth') =>
    `/i/${key}/photos/${id}/${size}`,
  /** The picture of the nth quilt, to save. */
  quilt: (key: string, n: number) => `/i/${key}/quilt/${n}.png`,
} as const

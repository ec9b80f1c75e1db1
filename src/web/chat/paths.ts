/** In an address: that a message has just arrived. */
export const written = 'message'

/** In an address: that many garments were looked over. */
export const screenedTold = 'screened'

/** The customer's addresses. The key is the only thing that opens a pile. */
export const paths = {
  start: '/i',
  pile: (key: string) => `/i/${key}`,
  /** The same, told that an answer went over the one of that act. */
  overtaken: (key: string, told: number | string) => `/i/${key}?told=${told}`,
  /** The same, told what the act after that one did to the price. */
  changed: (key: string, since: number) => `/i/${key}?since=${since}`,
  question: (key: string, item: number, question: string) => `/i/${key}/${item}/${question}`,
  /** Posted to: adds, copies, drops. Opened: the page between two garments. */
  garments: (key: string) => `/i/${key}/garments`,
  /** Many garments at once: to tell them, and to look them over. */
  closet: (key: string) => `/i/${key}/closet`,
  screening: (key: string) => `/i/${key}/closet/look`,
  review: (key: string) => `/i/${key}/review`,
  confirm: (key: string) => `/i/${key}/confirm`,
  keep: (key: string) => `/i/${key}/keep`,
  /** To say that a parcel was posted. */
  posted: (key: string) => `/i/${key}/posted`,
  messages: (key: string) => `/i/${key}/messages`,
  /** Where a message that was sent stands, told that it has arrived. */
  written: (key: string, open: boolean) =>
    open ? `/i/${key}/messages?told=${written}` : `/i/${key}?told=${written}#messages`,
  paper: (key: string) => `/i/${key}/paper`,
  /** The finished quilt with whose cloth is where, as a page. */
  keepsake: (key: string) => `/i/${key}/papers/keepsake`,
  /** A paper as a PDF. */
  offer: (key: string, version: number) => `/i/${key}/offer/${version}`,
  acceptOffer: (key: string, version: number) => `/i/${key}/offer/${version}/accept`,
  /** The laid-out quilt: to look at, and to say yes or what to change. */
  laidOut: (key: string) => `/i/${key}/laid-out`,
  receipt: (key: string, number: number) => `/i/${key}/receipts/${number}`,
  /** To take a confirmed pile back: to change it, or for good. */
  change: (key: string) => `/i/${key}/change`,
  /** What is kept of the customer; posted to below it: erases all of it. */
  yours: (key: string) => `/i/${key}/yours`,
  erase: (key: string) => `/i/${key}/erase`,
  /** All that is kept, as one file. */
  given: (key: string) => `/i/${key}/yours.zip`,
  erasePhoto: (key: string, id: string) => `/i/${key}/photos/${id}/erase`,
  withdraw: (key: string) => `/i/${key}/withdraw`,
  pdf: (key: string, name: 'packing' | 'tags' | 'keepsake') => `/i/${key}/papers/${name}.pdf`,
  language: (key: string, code: string) => `/i/${key}/language/${code}`,
  photo: (key: string, id: string, size: 'view' | 'thumb' | 'cloth') =>
    `/i/${key}/photos/${id}/${size}`,
  /** To mark the corners of a sheet on a photo; `from` is the question that it leads back to. */
  sheet: (key: string, id: string, from?: string) =>
    `/i/${key}/photos/${id}/sheet${from ? `?from=${from}` : ''}`,
  /** The picture of the nth quilt, to save. */
  quilt: (key: string, n: number) => `/i/${key}/quilt/${n}.png`,
} as const

/** Where a garment's tag leads, from outside. */
export const tagLink = (outside: string, code: string): string => `${outside}/t/${code}`

import type { QueueFilter, QueueOrder } from '../../desk/queue.ts'
import type { WaitsOn } from '../../store/schema-desk.ts'

interface ListQuery {
  readonly order?: QueueOrder | null
  readonly only?: QueueFilter | null
  readonly text?: string
  readonly page?: number
}

/** The desk's addresses. A pile goes by its number, which people say. */
export const deskPaths = {
  queue: '/desk',
  bench: '/desk/bench',
  benchPage: (page: number) => `/desk/bench?page=${page}`,
  people: '/desk/people',
  person: (id: string, act: 'link' | 'role' | 'close' | 'reopen') => `/desk/people/${id}/${act}`,
  list: (list: WaitsOn, { order, only, text, page = 1 }: ListQuery = {}) => {
    const query = new URLSearchParams({
      list,
      ...(order && { order }),
      ...(only && { only }),
      ...(text && { text }),
      ...(page > 1 && { page: String(page) }),
    })
    return `/desk?${query}`
  },
  files: '/desk/files',
  file: (name: string) => `/desk/files/view?${new URLSearchParams({ name })}`,
  /** To try a file otherwise; `base` is the draft that it is added to. */
  tryFile: (given: { readonly name?: string; readonly base?: string } = {}) => {
    const query = new URLSearchParams({ ...given }).toString()
    return `/desk/files/try${query && `?${query}`}`
  },
  /** How the intake is put on another site. */
  embed: '/desk/embed',
  shop: '/desk/shop',
  numbers: '/desk/numbers',
  numbersOver: (from: string, to: string) => `/desk/numbers?from=${from}&to=${to}`,
  export: (name: string) => `/desk/numbers/export/${name}.csv`,
  drafts: '/desk/files/drafts',
  draft: (id: string) => `/desk/files/drafts/${id}`,
  draftFile: (id: string, name: string) =>
    `/desk/files/drafts/${id}/file?${new URLSearchParams({ name })}`,
  signIn: '/desk/sign-in',
  signOut: '/desk/sign-out',
  welcome: (token: string) => `/desk/welcome/${token}`,
  pile: (number: number) => `/desk/piles/${number}`,
  plan: (number: number) => `/desk/piles/${number}/plan`,
  roles: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/roles`,
  whatIf: (number: number, tries: readonly string[] = []) => {
    const query = new URLSearchParams(tries.map((one) => ['try', one])).toString()
    // Both are plain in a query, and easier to read so.
    const plain = query.replaceAll('%3A', ':').replaceAll('%2C', ',')
    return `/desk/piles/${number}/what-if${plain ? `?${plain}` : ''}`
  },
  calendar: '/desk/calendar',
  /** The offer as it would be sent. */
  offer: (number: number) => `/desk/piles/${number}/offer`,
  /** What was agreed and paid, and where the box is. */
  agreement: (number: number) => `/desk/piles/${number}/agreement`,
  payments: (number: number) => `/desk/piles/${number}/payments`,
  counter: (number: number, payment: string) => `/desk/piles/${number}/payments/${payment}/counter`,
  milestones: (number: number) => `/desk/piles/${number}/milestones`,
  garment: (number: number, n: number) => `/desk/piles/${number}#garment-${n}`,
  decidePile: (number: number) => `/desk/piles/${number}/decision`,
  decideGarment: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/decision`,
  decideFlag: (number: number, n: number, flag: string) =>
    `/desk/piles/${number}/garments/${n}/flags/${flag}/decision`,
  /** To mark holes and stains on a garment's photos. */
  spots: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/spots`,
  /** To mark the corners of a sheet on one of its photos. */
  sheet: (number: number, n: number, id: string) =>
    `/desk/piles/${number}/garments/${n}/photos/${id}/sheet`,
  /** What is known of a garment, to set right. */
  facts: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/facts`,
  undoFact: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/facts/undo`,
  teardown: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/teardown`,
  /** The bench sheet of a garment. */
  benchSheet: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/bench`,
  benchPdf: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/bench.pdf`,
  /** A paper of a pile, as a page. */
  paper: (number: number, name: string) => `/desk/piles/${number}/papers/${name}`,
  pdf: (number: number, name: string) => `/desk/piles/${number}/papers/${name}.pdf`,
  /** What was written of a pile, open intakes too; posted to: writes to its customer. */
  messages: (number: number) => `/desk/piles/${number}/messages`,
  /** What is kept of a customer, and its end. */
  kept: (number: number) => `/desk/piles/${number}/kept`,
  given: (number: number) => `/desk/piles/${number}/kept.zip`,
  erasePhoto: (number: number, id: string) => `/desk/piles/${number}/photos/${id}/erase`,
  erase: (number: number) => `/desk/piles/${number}/erase`,
  settleMessage: (number: number, message: string) =>
    `/desk/piles/${number}/messages/${message}/settle`,
  /** Customers' messages of all piles that wait. */
  written: '/desk/messages',
  mails: (state: string | null = null, page = 1) => {
    const query = new URLSearchParams({
      ...(state && { state }),
      ...(page > 1 && { page: String(page) }),
    }).toString()
    return query ? `/desk/mails?${query}` : '/desk/mails'
  },
  mailAgain: (mail: string) => `/desk/mails/${mail}/again`,
  mailRevoke: (mail: string) => `/desk/mails/${mail}/revoke`,
  settle: (number: number, note: string) => `/desk/piles/${number}/notes/${note}/settle`,
  photo: (number: number, id: string, size: 'view' | 'thumb' | 'cloth') =>
    `/desk/piles/${number}/photos/${id}/${size}`,
  /** The nth quilt, to move its pieces. */
  arrange: (number: number, n: number) => `/desk/piles/${number}/quilt/${n}`,
  /** The picture of the nth quilt, to save. */
  quilt: (number: number, n: number) => `/desk/piles/${number}/quilt/${n}.png`,
} as const

/** A page of the desk to go to after signing in; anything else, and other sites, become the queue. */
export function ownPage(next: string | undefined): string {
  // A browser reads \ as /, and drops tabs and line ends: none of them belongs in an address of ours.
  if (!next || !/^\/[\x21-\x5b\x5d-\x7e]*$/.test(next)) return deskPaths.queue
  const base = 'http://desk.invalid'
  if (!URL.canParse(next, base)) return deskPaths.queue
  const { origin, pathname, search } = new URL(next, base)
  const ours = pathname === deskPaths.queue || pathname.startsWith(`${deskPaths.queue}/`)
  return origin === base && ours ? pathname + search : deskPaths.queue
}

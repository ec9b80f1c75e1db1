import type { Photo } from './view.ts'

/** A form to write to the shop, with what was typed when it was refused. */
export interface WriteForm {
  /** Names the form on its page. */
  readonly id: string
  readonly postTo: string
  readonly hidden: Readonly<Record<string, string>>
  readonly label: string
  readonly text: string
  readonly longest: number
  /** So many photos may come along; 0: none. */
  readonly mostPhotos: number
  readonly error: string | null
}

export interface Said {
  readonly id: string
  /** "Marta", "You". */
  readonly by: string
  readonly at: string
  /** Empty: photos alone came. */
  readonly text: string
  readonly photos: readonly Photo[]
  readonly mine: boolean
}

/** What was written about one garment, or about the pile. */
export interface TalkThread {
  readonly id: string
  /** "Marta asks about Dad's blue flannel". */
  readonly title: string
  /** The shop waits for an answer here. */
  readonly asks: boolean
  readonly said: readonly Said[]
  readonly answer: WriteForm
}

/** Everything that the shop and the customer wrote to each other. */
export interface Talk {
  /** Those in which the shop waits for an answer first. */
  readonly threads: readonly TalkThread[]
  readonly write: WriteForm
}

export interface MessagesPage {
  readonly page: 'messages'
  readonly talk: Talk
  readonly backHref: string
}

/** Where reminders of a pile are stopped, or asked for again. */
export interface RemindersPage {
  readonly page: 'reminders'
  readonly stopped: boolean
  readonly postTo: string
}

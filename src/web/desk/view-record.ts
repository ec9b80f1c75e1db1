import type { Link, Photo } from './view.ts'
import type { Ticked } from './view-custody.ts'

/** What a form of the records asks for. */
export interface RecordField {
  readonly name: string
  readonly label: string
  readonly hint: string | null
  readonly kind: 'line' | 'words' | 'number' | 'place' | 'choice' | 'list' | 'day'
  /** Of a choice or a list. */
  readonly options: readonly Ticked[]
  readonly value: string
  readonly required: boolean
}

export interface RecordForm {
  readonly act: string
  readonly label: string
  readonly postTo: string
  readonly cautions: readonly string[]
  readonly fields: readonly RecordField[]
  readonly photo: 'none' | 'one' | 'several'
  /** It was sent and refused, or is the one that is looked for. */
  readonly open: boolean
}

/** An entry of the records. */
export interface RecordLine {
  readonly seq: number
  readonly what: string
  readonly by: string
  readonly note: string
  /** Who took it back and why; null: it stands. */
  readonly undone: string | null
  readonly photos: readonly Photo[]
  /** Takes it back; null: it may not be. */
  readonly undo: RecordForm | null
}

export interface RecordSection {
  readonly id: string
  readonly title: string
  readonly lead: string
  /** What is seen to, and what is not yet. */
  readonly checks: readonly { readonly label: string; readonly done: boolean }[]
  readonly lines: readonly RecordLine[]
  readonly forms: readonly RecordForm[]
  /** Why nothing can be written now; null: something can. */
  readonly closed: string | null
}

/** The quilt of a pile laid out: what was shown, what its customer said, and what can be written now. */
export interface LaidOutPage {
  readonly page: 'laid-out'
  readonly title: string
  readonly links: readonly Link[]
  readonly refused: string | null
  readonly hidden: Readonly<Record<string, string>>
  /** How it stands, in a sentence; `asks` where it is our turn. */
  readonly standing: { readonly text: string; readonly asks: boolean }
  /** What the customer wishes to be changed, in their words; null: nothing. */
  readonly wish: string | null
  readonly section: RecordSection
}

export interface RecordPage {
  readonly page: 'record'
  readonly title: string
  readonly code: string
  readonly name: string
  readonly at: string
  /** That it is stopped; null: it is not. */
  readonly stopped: string | null
  readonly links: readonly Link[]
  readonly places: readonly string[]
  readonly refused: string | null
  readonly hidden: Readonly<Record<string, string>>
  readonly sections: readonly RecordSection[]
}

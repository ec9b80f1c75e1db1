import type { DraftNamed } from '../../desk/drafts.ts'
import {
  changedSince,
  type FileKind,
  type FlowVersion,
  fileKinds,
  type ListedFile,
  type Live,
} from '../../desk/live-files.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import type { FilePage, FileShown, FilesPage } from './view-files.ts'
import { dayWords, momentWords } from './when.ts'

const bytesWords = (bytes: number, { say, locale }: Language): string => {
  const thousands = new Intl.NumberFormat(locale, { maximumFractionDigits: 1 }).format(bytes / 1000)
  return say('desk.files.size', { kb: thousands })
}

const lineOf = ({ version, bytes }: ListedFile, language: Language): string =>
  language.say('desk.files.line', { version, size: bytesWords(bytes, language) })

function fileShown(file: ListedFile, language: Language): FileShown {
  const { say, locale } = language
  const { name, rates } = file
  const from = rates && dayWords(Date.parse(`${rates.from}T00:00:00Z`), locale)
  return {
    name,
    href: deskPaths.file(name),
    tryAt: deskPaths.tryFile({ name }),
    line: lineOf(file, language),
    mark: rates && from ? say(`desk.files.rates.${rates.stands}`, { from }) : null,
  }
}

function versionWords({ version, since, open, live }: FlowVersion, language: Language): string {
  const { say, locale } = language
  const at =
    since === null
      ? say('desk.files.flow.unused')
      : say('desk.files.flow.since', { at: momentWords(since, locale) })
  return say(live ? 'desk.files.flow.live' : 'desk.files.flow.older', { version, at, count: open })
}

export interface FilesShown {
  readonly live: Live
  readonly files: readonly ListedFile[]
  readonly versions: readonly FlowVersion[]
  readonly drafts: readonly DraftNamed[]
}

const draftLabel = ({ files }: DraftNamed, { locale }: Language): string =>
  new Intl.ListFormat(locale).format(files.map(({ name }) => name))

export function filesPage(
  { live, files, versions, drafts }: FilesShown,
  language: Language,
): FilesPage {
  const { say, locale } = language
  const { proof, since } = live
  const { counts } = proof
  const changed = changedSince(live)
  const lines = (kind: FileKind): string[] =>
    kind === 'flow' ? versions.map((one) => versionWords(one, language)) : []
  return {
    page: 'files',
    title: say('desk.files.title'),
    proof: [
      say('desk.files.proof', {
        proof: proof.name,
        tables: counts.tables,
        rows: counts.rows,
        statements: counts.statements,
        questions: counts.questions,
      }),
      say('desk.files.since', { at: momentWords(since, locale) }),
    ],
    waiting:
      changed.length === 0
        ? null
        : say('desk.files.waiting', { names: new Intl.ListFormat(locale).format(changed) }),
    groups: fileKinds.map((kind) => ({
      title: say(`desk.files.kinds.${kind}`),
      lines: lines(kind),
      files: files.filter((file) => file.kind === kind).map((file) => fileShown(file, language)),
    })),
    tryNew: { label: say('desk.files.try_new'), href: deskPaths.tryFile() },
    drafts: drafts.map((draft) => ({
      href: deskPaths.draft(draft.id),
      label: draftLabel(draft, language),
      line: `${say('desk.by', { name: draft.who, at: momentWords(draft.at, locale) })} · ${say(`desk.drafts.states.${draft.state}`)}`,
    })),
  }
}

export const filePage = (file: ListedFile, text: string, language: Language): FilePage => ({
  page: 'file',
  title: file.name,
  line: lineOf(file, language),
  text,
  tryIt: { label: language.say('desk.files.try'), href: deskPaths.tryFile({ name: file.name }) },
  back: { label: language.say('desk.files.back'), href: deskPaths.files },
})

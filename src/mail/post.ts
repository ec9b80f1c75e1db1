import { open, rename } from 'node:fs/promises'
import { join } from 'node:path'
import { makeFolder } from '../base/make-folder.ts'
import { once } from '../base/once.ts'
import { type Letter, messageOf } from './letter.ts'

/** What became of a try: `lasting` troubles are the same at every try. */
export type Posted =
  | { readonly sent: true }
  | { readonly sent: false; readonly trouble: string; readonly lasting: boolean }

/** A way out for mails. */
export interface Post {
  readonly way: 'smtp' | 'folder'
  /** Never throws: troubles are told by a code, for a server's own words may quote the mail. */
  send(letter: Letter): Promise<Posted>
}

/** No try lasts longer, ms. Whoever took a mail for longer is taken to be gone. */
export const longestTry = 3 * 60 * 1000

const silence = {
  connectionTimeout: 20_000,
  greetingTimeout: 20_000,
  socketTimeout: 60_000,
  dnsTimeout: 20_000,
}

/** Loaded with the first mail: a start waits for nothing that it does not need. */
const mailer = () => import('nodemailer')

const badAddress: Posted = { sent: false, trouble: 'address', lasting: true }

interface MailTrouble {
  readonly code?: unknown
  readonly responseCode?: unknown
}

/** A server's 5yz to a recipient or to the text lasts (RFC 5321, 4.2.1); the rest may pass. */
function troubleOf(error: unknown): Posted {
  const { code, responseCode } = (error ?? {}) as MailTrouble
  const status = typeof responseCode === 'number' ? responseCode : null
  const about = typeof code === 'string' && /^\w{1,40}$/.test(code) ? code : 'unknown'
  return {
    sent: false,
    trouble: status === null ? about : `${about} ${status}`,
    lasting: ['EENVELOPE', 'EMESSAGE'].includes(about) && status !== null && status >= 550,
  }
}

/** Over SMTP, by an address `smtp(s)://user:password@host:port`; the connection ends with each mail. */
export function openSmtp(url: string): Post {
  const transport = once(async () => (await mailer()).createTransport({ url, ...silence }))
  return {
    way: 'smtp',
    send: async (letter) => {
      const message = messageOf(letter)
      if (!message) return badAddress
      try {
        await (await transport()).sendMail({ ...message, signal: AbortSignal.timeout(longestTry) })
        return { sent: true }
      } catch (error) {
        return troubleOf(error)
      }
    },
  }
}

/** Without a mail server: each mail is a file `<id>.eml` (RFC 5322) in the folder. */
export function openMailFolder(folder: string): Post {
  const writer = once(async () =>
    (await mailer()).createTransport({ streamTransport: true, buffer: true, newline: 'windows' }),
  )
  return {
    way: 'folder',
    send: async (letter) => {
      const message = messageOf(letter)
      if (!message) return badAddress
      try {
        const { message: bytes } = await (await writer()).sendMail(message)
        await writeWhole(join(folder, `${letter.id}.eml`), bytes as Buffer, folder)
        return { sent: true }
      } catch (error) {
        return troubleOf(error)
      }
    },
  }
}

/** A file is there whole or not at all. It holds a customer's link: nobody else may read it. */
async function writeWhole(file: string, bytes: Buffer, folder: string): Promise<void> {
  makeFolder(folder)
  const draft = `${file}.part`
  const handle = await open(draft, 'w', 0o600)
  try {
    await handle.writeFile(bytes)
    await handle.sync()
  } finally {
    await handle.close()
  }
  await rename(draft, file)
}

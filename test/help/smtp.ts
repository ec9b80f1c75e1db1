import type { AddressInfo } from 'node:net'
import { type ParsedMail, simpleParser } from 'mailparser'
import { SMTPServer } from 'smtp-server'

/** A mail as it came over the wire. */
export interface Arrived {
  /** The envelope's recipients. */
  readonly to: readonly string[]
  readonly from: string
  readonly raw: string
  readonly mail: ParsedMail
}

export interface MailServer {
  readonly url: string
  readonly arrived: Arrived[]
  /** Answers the next text with this, instead of taking it: { code, message }. */
  refuseNext: { code: number; message: string } | null
  /** Refuses this recipient. */
  unknown: string | null
  close(): Promise<void>
}

/** A mail server in this process, on a port of its own or on one that was its before. */
export async function openMailServer(port = 0): Promise<MailServer> {
  const refusal = ({ code, message }: { code: number; message: string }) =>
    Object.assign(new Error(message), { responseCode: code })
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS', 'AUTH'],
    onRcptTo: ({ address }, _, done) =>
      address === here.unknown
        ? done(refusal({ code: 550, message: `no <${address}> here` }))
        : done(),
    onData: (stream, { envelope }, done) => {
      const chunks: Buffer[] = []
      stream.on('data', (chunk: Buffer) => chunks.push(chunk))
      stream.on('end', async () => {
        const { refuseNext } = here
        here.refuseNext = null
        if (refuseNext) return done(refusal(refuseNext))
        const raw = Buffer.concat(chunks)
        here.arrived.push({
          to: envelope.rcptTo.map(({ address }) => address),
          from: envelope.mailFrom ? envelope.mailFrom.address : '',
          raw: raw.toString('utf8'),
          mail: await simpleParser(raw),
        })
        done()
      })
    },
  })
  await new Promise<void>((resolve, reject) => {
    server.on('error', reject)
    server.listen(port, '127.0.0.1', resolve)
  })
  const at = (server.server.address() as AddressInfo).port
  const here: MailServer = {
    url: `smtp://127.0.0.1:${at}`,
    arrived: [],
    refuseNext: null,
    unknown: null,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  }
  return here
}

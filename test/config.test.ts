import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { expect, test } from 'vitest'
import { readConfig } from '../src/config.ts'
import { refusal, run } from './help/command.ts'

/** Each setting with values that are wrong, and what the sentence says to do about it. */
const wrong: Readonly<Record<string, readonly [says: RegExp, ...values: string[]]>> = {
  PORT: [/whole number from 0 to 65535/, 'http', '80.5', '-1', '65536'],
  DATABASE_URL: [/begins with postgres:\/\//, 'mysql://host/shop', 'shop.db', 'postgres://ho st/x'],
  SMTP_URL: [/begins with smtp:\/\//, 'http://mail.example', 'mail.example'],
  PUBLIC_URL: [/begins with https:\/\//, 'quilts.example', 'ftp://quilts.example'],
  EMBED_ORIGINS: [/https:\/\/, a name/, 'quilts.example', 'https://quilts.example/page', '*'],
  LOG_LEVEL: [/one of trace, debug, info/, 'loud', 'INFO'],
  METRICS_TOKEN: [/16 letters/, 'short', 'two words that are long'],
  TRUSTED_PROXIES: [/10\.0\.0\.0\/8/, 'everyone', '10.0.0.0/33', '10.0.0.0/8/8', '300.1.1.1'],
  LEAVE_SECONDS: [/0 to 300 seconds/, 'soon', '-1', '301'],
  INTAKES_PER_ADDRESS: [/whole number from 1 up/, 'many', '0', '1.5'],
  INTAKES_PER_DAY: [/whole number from 1 up/, '0'],
  PHOTOS_PER_ADDRESS: [/whole number from 1 up/, '-5'],
  PHOTOS_PER_DAY: [/at most 1000000000/, '1000000001'],
  MAILS_PER_ADDRESS: [/whole number from 1 up/, '0'],
  MAILS_PER_DAY: [/whole number from 1 up/, 'none'],
  PHOTOS_URL: [/folder, or s3:\/\//, 'ftp://photos', 's3://B'],
  S3_ENDPOINT: [/PHOTOS_URL is s3/, ''],
}
const around: Readonly<Record<string, Record<string, string>>> = {
  S3_ENDPOINT: { PHOTOS_URL: 's3://shop-photos' },
}

test.each(
  Object.entries(wrong).flatMap(([name, [says, ...values]]) =>
    values.map((value) => [name, value, says] as const),
  ),
)('%s=%j is refused by its name, with what to write instead', (name, value, says) => {
  const read = () => readConfig({ ...around[name], [name]: value })
  expect(read).toThrow(
    expect.objectContaining({
      code: 'setting_invalid',
      details: { setting: name, message: expect.stringMatching(says) },
    }),
  )
})

test('every setting of the README is read, and each that can be wrong is tried above', () => {
  const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8')
  const [, settings = ''] = /## Settings\n([\s\S]*?)\n## /.exec(readme) ?? []
  const named = [...settings.matchAll(/^\| (`[^|]+) \|/gm)].flatMap(([, cell]) =>
    [...cell!.matchAll(/`([A-Z0-9_]+)`/g)].map(([, one]) => one!),
  )
  // Any text is one of these; the rest of the store's settings are tried in photos-at.test.ts.
  const anything = ['HOST', 'DATA_DIR', 'FLOWS_DIR']
  const elsewhere = ['S3_REGION', 'S3_ACCESS_KEY_ID', 'S3_SECRET_ACCESS_KEY']
  expect(named.sort()).toEqual([...Object.keys(wrong), ...anything, ...elsewhere].sort())
})

test('nothing set is a server for this machine', () => {
  expect(readConfig({})).toMatchObject({ port: 8080, host: '127.0.0.1', leaveMs: 0 })
})

test('a start that is refused says what is to be changed, and ends', {
  timeout: 240_000,
}, async () => {
  const taken = createServer()
  await new Promise<void>((resolve) => taken.listen(0, '127.0.0.1', resolve))
  const PORT = String((taken.address() as AddressInfo).port)
  const DATA_DIR = `${process.env.TMPDIR}/pieceworth-start-${process.pid}`
  try {
    const starts: Readonly<Record<string, string>>[] = [
      { PORT, DATA_DIR },
      { PORT: '0', HOST: '192.0.2.1', DATA_DIR },
      { DATA_DIR: '/proc/none' },
      { DATA_DIR: '/dev/null/none' },
      { DATABASE_URL: 'postgres://nobody@127.0.0.1:1/none', DATA_DIR },
    ]
    const refused: unknown[] = []
    for (const env of starts) {
      const { exit, code, message } = refusal(
        await run(['serve'], { env: { LOG_LEVEL: 'silent', ...env } }),
      )
      refused.push([exit, code, message])
    }
    expect(refused).toEqual([
      [1, 'setting_invalid', expect.stringMatching(/PORT .*another program listens there/)],
      [1, 'setting_invalid', expect.stringMatching(/HOST .*no such address/)],
      [1, 'setting_invalid', expect.stringMatching(/DATA_DIR .*\/proc\/none cannot be made/)],
      [1, 'setting_invalid', expect.stringMatching(/DATA_DIR .*\/dev\/null\/none cannot be made/)],
      [
        1,
        'setting_invalid',
        expect.stringMatching(/DATABASE_URL .*127\.0\.0\.1:1\/none: no database answers there/),
      ],
    ])
  } finally {
    await new Promise((resolve) => taken.close(resolve))
  }
})

import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { addGarment, answerAll, pileAnswers, sendFiles, shirt } from '../help/chat.ts'
import { refusal, run } from '../help/command.ts'
import { plain } from '../help/pictures.ts'
import { type S3, s3Bucket, s3Keys, startS3 } from '../help/s3.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import { Walker } from '../help/walker.ts'

const settings = ({ url }: S3) => ({
  PHOTOS_URL: `s3://${s3Bucket}/shop`,
  S3_ENDPOINT: url,
  S3_REGION: s3Keys.region,
  S3_ACCESS_KEY_ID: s3Keys.accessKeyId,
  S3_SECRET_ACCESS_KEY: s3Keys.secretAccessKey,
})

describe('a server that keeps its photos in a bucket', () => {
  let s3: S3
  let server: RunningServer
  let walker: Walker

  beforeAll(async () => {
    s3 = await startS3()
    server = await startServer({ env: { LOG_LEVEL: 'trace', ...settings(s3) } })
    walker = await new Walker(server.url).start()
    await answerAll(walker, pileAnswers)
  })
  afterAll(async () => {
    await server?.remove()
    await s3?.close()
  })

  const file = async (colour: string) => ({
    bytes: await plain(700, 500, colour).jpeg().toBuffer(),
    name: 'shirt.jpg',
    type: 'image/jpeg',
  })
  const readiness = async () => {
    const response = await fetch(`${server.url}/readyz`)
    return [response.status, ((await response.json()) as { photos: boolean }).photos]
  }
  const shown = () =>
    walker.root.querySelectorAll('.photos img').map((one) => one.getAttribute('src')!)

  test('keeps what a customer sends there alone, and shows it through its own pages', async () => {
    await addGarment(walker, shirt, 'photos')
    await sendFiles(walker, [await file('#35619f')], { anyway: 'yes' })
    expect(walker.question?.id).toBe('wear')
    await answerAll(walker, shirt)
    const keys = [...s3.objects.keys()]
    expect(keys).toHaveLength(4)
    for (const key of keys)
      expect(key).toMatch(/^shop\/[0-9a-f]{64}\.(cloth|thumb|view|full)\.jpg$/)
    const picture = await fetch(server.url + shown()[0]!)
    expect([picture.status, picture.headers.get('content-type')]).toEqual([200, 'image/jpeg'])
    const thumb = s3.objects.get(keys.find((key) => key.includes('thumb'))!)
    expect(Buffer.from(await picture.arrayBuffer())).toEqual(thumb)
    expect(walker.html).not.toContain(s3.url)
    expect(await readiness()).toEqual([200, true])
  })

  test('asks again while the bucket cannot be reached, and goes on afterwards', async () => {
    await addGarment(walker, shirt, 'photos')
    await s3.down()
    expect(await readiness()).toEqual([503, false])
    await sendFiles(walker, [await file('#a03030')], { anyway: 'yes' })
    expect(walker.status).toBe(503)
    expect(walker.question?.id).toBe('photos')
    expect(walker.text('.errors')).toContain('try again in a minute')

    await s3.back()
    expect(await readiness()).toEqual([200, true])
    await sendFiles(walker, [await file('#a03030')], { anyway: 'yes' })
    expect(walker.question?.id).toBe('wear')
    expect(s3.objects.size).toBe(8)
  })

  test('writes neither of its keys into the log', () => {
    const said = server.stdout() + server.stderr()
    expect(said).toContain('store_unavailable')
    expect(said).not.toContain(s3Keys.accessKeyId)
    expect(said).not.toContain(s3Keys.secretAccessKey)
    expect(said).not.toContain('AWS4-HMAC-SHA256')
  })
})

test('a server whose bucket cannot be used does not start, and names the setting', async () => {
  const s3 = await startS3()
  const dataDir = mkdtempSync(join(tmpdir(), 'pieceworth-data-'))
  try {
    const wrong = { S3_SECRET_ACCESS_KEY: 'the-secret-of-another-key' }
    const env = { PORT: '0', DATA_DIR: dataDir, LOG_LEVEL: 'silent', ...settings(s3), ...wrong }
    const refused = refusal(await run(['serve'], { env }))
    expect(refused).toEqual({
      exit: 1,
      stdout: '',
      code: 'setting_invalid',
      message:
        'The setting S3_SECRET_ACCESS_KEY is not right: it does not belong to S3_ACCESS_KEY_ID',
    })
  } finally {
    await s3.close()
    rmSync(dataDir, { recursive: true, force: true })
  }
})

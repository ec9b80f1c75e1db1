import sharp from 'sharp'
import { Walker } from '../help/walker.ts'
import { type DemoGarment, garments, pileAnswers } from './pile.ts'

async function photoOf([r, g, b]: readonly [number, number, number]): Promise<Blob> {
  const bytes = await sharp({
    create: { width: 900, height: 700, channels: 3, background: { r, g, b } },
  })
    .jpeg()
    .toBuffer()
  return new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' })
}

/** Sends a photo through the page's form, as a browser would. */
async function sendPhoto(walker: Walker, colour: readonly [number, number, number]) {
  const form = walker.root.querySelector('form[data-question]')!
  const body = new FormData()
  for (const input of form.querySelectorAll('input[type=hidden]')) {
    body.append(input.getAttribute('name')!, input.getAttribute('value') ?? '')
  }
  body.append('act', 'answer')
  body.append('photo', await photoOf(colour), 'garment.jpg')
  await walker.open(form.getAttribute('action')!, { method: 'POST', body })
}

async function answerOne(walker: Walker, garment: DemoGarment | null): Promise<void> {
  const question = walker.question!
  if (walker.status >= 400) throw new Error(`${question.id}: ${walker.text('.errors')}`)
  if (question.id === 'name' && garment) return void (await walker.send({ value: garment.name }))
  if (question.id === 'photos' && garment?.photo) return sendPhoto(walker, garment.photo)
  const answer = (garment?.answers ?? pileAnswers)[question.id]
  if (answer) await walker.send(answer)
  else if (question.optional) await walker.skip()
  else if (question.kind === 'confirm') await walker.send({ value: 'yes' })
  else await walker.send({ act: 'ask', note: 'We are not sure. Could you look at it?' })
}

/** Plays the invented pile through a running server, from hello to packing list. */
export async function play(base: string, language = 'en'): Promise<Walker> {
  const walker = new Walker(base)
  await walker.start(language)
  while (walker.question) await answerOne(walker, null)
  for (const garment of garments) {
    await walker.press('add-garment')
    while (walker.question) await answerOne(walker, garment)
  }
  await walker.press('confirm-pile')
  while (walker.question) await answerOne(walker, null)
  await walker.press('confirm-pile')
  if (!walker.confirmed) throw new Error(`the pile was not confirmed: ${walker.text('h1')}`)
  return walker
}

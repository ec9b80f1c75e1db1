import { Walker } from '../help/walker.ts'
import { type DemoGarment, garments } from './pile.ts'
import { photoOf, replyOf } from './reply.ts'

/** Sends a photo through the page's form, as a browser would. */
async function sendPhoto(walker: Walker, garment: DemoGarment) {
  const form = walker.root.querySelector('form[data-question]')!
  const body = new FormData()
  for (const input of form.querySelectorAll('input[type=hidden]')) {
    body.append(input.getAttribute('name')!, input.getAttribute('value') ?? '')
  }
  body.append('act', 'answer')
  const photo = new Blob([new Uint8Array(await photoOf(garment))], { type: 'image/jpeg' })
  body.append('photo', photo, 'garment.jpg')
  await walker.open(form.getAttribute('action')!, { method: 'POST', body })
}

async function answerOne(walker: Walker, garment: DemoGarment | null): Promise<void> {
  const question = walker.question!
  if (walker.status >= 400) throw new Error(`${question.id}: ${walker.text('.errors')}`)
  if (question.id === 'photos' && garment?.photo) return sendPhoto(walker, garment)
  await walker.send(replyOf(question, garment))
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

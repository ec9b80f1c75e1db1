import type { Page } from 'playwright-core'
import { turn } from './driver.ts'
import { lookOf } from './told-lane.ts'

/**
 * A hand on a phone, counted: each touch of a control is a tap, a field to write in and a photo to choose too.
 * Characters that are typed and pictures that are taken are counted beside, and the waits for pages.
 */
export class Hand {
  taps = 0
  typed = 0
  pictures = 0
  waitedMs = 0
  readonly page: Page

  constructor(page: Page) {
    this.page = page
  }

  async tap(selector: string): Promise<void> {
    this.taps += 1
    await this.page.tap(selector)
  }

  /** A tap that another page follows. */
  async go(selector: string): Promise<void> {
    this.taps += 1
    await this.waited(() => turn(this.page, () => this.page.tap(selector)))
  }

  async write(selector: string, text: string): Promise<void> {
    await this.tap(selector)
    this.typed += text.length
    await this.page.fill(selector, text)
  }

  /** `until`: what tells that it has arrived; without it nothing is sent yet. */
  async picture(buffer: Buffer, until?: string): Promise<void> {
    this.taps += 1
    this.pictures += 1
    const file = { name: 'it.jpg', mimeType: 'image/jpeg', buffer }
    await this.waited(async () => {
      await this.page.setInputFiles('#field-photo', file)
      if (until) await this.page.waitForSelector(until)
    })
  }

  private async waited(work: () => Promise<unknown>): Promise<void> {
    const from = performance.now()
    await work()
    this.waitedMs += performance.now() - from
  }
}

/** A label that is read surely, and a photo that shows a whole garment. */
export const clearLabel = ['100% cotton', 'warm iron', 'machine wash warm']
export const clearLook = lookOf({ graphic: null })

export const oneLine = "Dad's blue checked flannel shirt, large"

/** Ten garments: three alike, one with a hole; one will be damp, one stained, one must be in the quilt. */
export const tenLines = [
  oneLine,
  'his red and black plaid flannel, XL',
  'white striped shirt with buttons, L',
  '3 x plain grey T-shirt, M',
  'plain navy hoodie, L',
  'plain green polo shirt, M',
  'brown plaid flannel with a hole at the elbow, L',
  'plain dark blue jeans, L',
].join('\n')

/** On the page between two garments, into the lines, and on to look them over. */
async function tell(hand: Hand, lines: string): Promise<void> {
  await hand.go('a[href$="/closet"]')
  await hand.write('#field-lines', lines)
  await hand.go('[data-act=add-lines]')
}

async function markOne(hand: Hand, mark: string, garment: number): Promise<void> {
  await hand.tap(`[data-mark="${mark}"] summary`)
  await hand.tap(`label[for="mark-${garment}-${mark.replace(':', '-')}"]`)
}

async function labelOf(hand: Hand, label: Buffer): Promise<void> {
  await hand.picture(label, '#label-read')
  await hand.go('#label-read button[value=answer]')
}

const asked = (page: Page) => page.getAttribute('form[data-question]', 'data-question')

/** One garment from the page between two to that page again: its line, label and photo, all of them clear. */
export async function tellOne(hand: Hand, photo: Buffer, label: Buffer): Promise<void> {
  await tell(hand, oneLine)
  await hand.go('[data-act=screened]')
  await labelOf(hand, label)
  await hand.picture(photo)
  await hand.go('.go button[value=answer]')
}

/** Ten garments, told to the end, or kept at home. Gives back what was asked one by one. */
export async function tellTen(hand: Hand, label: Buffer): Promise<readonly string[]> {
  const { page } = hand
  await tell(hand, tenLines)
  await markOne(hand, 'history:stained', 1)
  await markOne(hand, 'history:damp', 3)
  await markOne(hand, 'details:must-use', 2)
  await hand.go('[data-act=screened]')
  await hand.go('[data-early=home] [data-act=drop-garment]')
  const questions: string[] = []
  while ((await page.locator('form[data-question]').count()) > 0) {
    const question = (await asked(page))!
    questions.push(question)
    if (question === 'label') await labelOf(hand, label)
    else if ((await page.locator('[data-skip]').count()) > 0) await hand.go('[data-skip]')
    else throw new Error(`this walk is lost: nothing was to be asked of ${question}`)
  }
  return questions
}

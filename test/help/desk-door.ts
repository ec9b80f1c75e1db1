import type { Page } from 'playwright-core'
import { turn } from './driver.ts'

export const owner = {
  name: 'Odile Ferrin',
  email: 'odile@thimble.example',
  password: 'three blue buttons on a tin',
} as const

/** Makes the owner's account on the page of the one-time link, and so comes to the queue. */
export async function welcome(page: Page, ownerUrl: string): Promise<void> {
  await page.goto(ownerUrl)
  await page.fill('#field-name', owner.name)
  await page.fill('#field-email', owner.email)
  await page.fill('#field-password', owner.password)
  await turn(page, () => page.click('main form button[type=submit]'))
}

export async function signIn(page: Page, base: string): Promise<void> {
  await page.goto(`${base}/desk`)
  await page.fill('#field-email', owner.email)
  await page.fill('#field-password', owner.password)
  await turn(page, () => page.click('main form button[type=submit]'))
}

/**
 * Niceties for pages that work without: a reload keeps what was typed, a double tap sends once, a big
 * photo is made smaller before it travels, a label's photo is read where it is chosen, a tap answers where
 * it may, and reading starts where the page has something to say.
 */

import { readLabelPhotos } from './label.client.ts'
import { shrink } from './smaller.client.ts'
import { sendByTap, tellTapped } from './tap.client.ts'
import { travel, travels } from './travel.client.ts'

arrive()
travel(arrive)

/** What is done with each page as it is shown. */
function arrive(): void {
  startReading()
  tellNotice()
  openOnWide()
  for (const each of document.forms) sendOnce(each)
  void settle()
  tellTapped()
  const form = document.querySelector<HTMLFormElement>('form[data-question], form[data-closet]')
  if (!form) return
  keepTyped(form)
  sendByTap(form)
  if (form.dataset.kind === 'label') readLabelPhotos(form)
  else shrinkPhotos(form)
}

/** A page that follows a step is read from what it says; the shop's first page from its top. */
function startReading(): void {
  if (location.hash || document.querySelector('[data-start]')) return
  // A reader of the page around us goes on reading there.
  if (document.documentElement.dataset.framed === 'first') {
    document.documentElement.dataset.framed = 'later'
    return
  }
  const place = document.getElementById('errors') ?? document.getElementById('title')
  place?.focus({ preventScroll: place.id === 'title' })
}

let isFirst = true

/** What a page has to tell first is read aloud, also where it was put in place of another. */
function tellNotice(): void {
  const live = document.getElementById('live')
  const notice = document.querySelector('[role=status]')?.textContent
  if (live && notice && !isFirst) live.textContent = notice
  isFirst = false
}

/** On a wide page there is room for every tag. */
function openOnWide(): void {
  if (!matchMedia('(min-width: 60rem)').matches) return
  for (const fold of document.querySelectorAll<HTMLDetailsElement>('details[data-opens-wide]')) {
    fold.open = true
  }
}

/** While the plan behind a page is not settled, what hangs on it is looked at again, and less and less often. */
async function settle(): Promise<void> {
  const main = document.getElementById('main')
  for (let wait = 1000; wait < 20_000; wait *= 1.6) {
    const unsettled = [...document.querySelectorAll<HTMLElement>('[data-unsettled]')]
    if (unsettled.length === 0) return
    await new Promise((resolve) => setTimeout(resolve, wait))
    if (!main?.isConnected) return
    const answer = await fetch(location.href).catch(() => null)
    if (!answer?.ok) continue
    const fresh = new DOMParser().parseFromString(await answer.text(), 'text/html')
    for (const shown of unsettled) {
      const now = fresh.getElementById(shown.id)
      if (!now) continue
      if (now.innerHTML !== shown.innerHTML) shown.replaceChildren(...now.childNodes)
      if (!('unsettled' in now.dataset)) delete shown.dataset.unsettled
    }
  }
}

/** The button keeps its place and value; a second press is not sent. Coming back frees it again. */
function sendOnce(each: HTMLFormElement): void {
  // Those that bear a key are sent by travel.client.ts.
  if (travels(each)) return
  let sent = false
  each.addEventListener('submit', (event) => {
    if (sent) {
      event.preventDefault()
      return
    }
    sent = true
    event.submitter?.setAttribute('aria-disabled', 'true')
  })
  addEventListener('pageshow', () => {
    sent = false
    for (const button of each.querySelectorAll('[aria-disabled]'))
      button.removeAttribute('aria-disabled')
  })
}

/** Typed words outlive a reload of the same page in the same tab; they go once they are sent. */
function keepTyped(asked: HTMLFormElement): void {
  const key = `typed ${location.pathname} ${asked.dataset.question ?? asked.dataset.closet}`
  const fields = [
    ...asked.querySelectorAll<HTMLTextAreaElement | HTMLInputElement>('textarea, input[type=text]'),
  ]
  const kept = read(key)
  for (const field of fields) {
    const was = kept[field.name]
    if (was && field.value === '') field.value = was
    field.addEventListener('input', () =>
      store(() =>
        sessionStorage.setItem(
          key,
          JSON.stringify(Object.fromEntries(fields.map(({ name, value }) => [name, value]))),
        ),
      ),
    )
  }
  asked.addEventListener('submit', () => store(() => sessionStorage.removeItem(key)))
}

function read(key: string): Record<string, string> {
  try {
    return JSON.parse(sessionStorage.getItem(key) ?? '{}') as Record<string, string>
  } catch {
    return {}
  }
}

// Some browsers refuse storage altogether; typing goes on without it.
function store(write: () => void): void {
  try {
    write()
  } catch {}
}

function shrinkPhotos(asked: HTMLFormElement): void {
  const input = asked.querySelector<HTMLInputElement>('input[type=file]')
  input?.addEventListener('change', async () => {
    const chosen = [...(input.files ?? [])]
    const smaller = await Promise.all(chosen.map(shrink))
    if (smaller.every((file, i) => file === chosen[i])) return
    const unchanged = chosen.every((file, i) => file === input.files?.[i])
    if (!unchanged) return
    const files = new DataTransfer()
    for (const file of smaller) files.items.add(file)
    input.files = files.files
  })
}

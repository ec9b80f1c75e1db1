/**
 * Goes from page to page of a pile without loading any: forms that bear an idempotency key are sent from here, and
 * the page that comes back takes the place of the one that is shown. Whatever is not as it should be (another kind of
 * answer, a newer release) goes the browser's own way.
 */

import { deliver, type Letter, pileOf, type Told, unsent } from './wire.client.ts'

/** `arrive`: what is done with a page once it is shown. */
export function travel(arrive: () => void): void {
  let leaving = false
  let shown = here()

  const show = async (answer: Response, push: boolean, at = answer.url): Promise<void> => {
    const html = answer.headers.get('content-type')?.startsWith('text/html')
    const fresh = html ? new DOMParser().parseFromString(await answer.text(), 'text/html') : null
    if (!fresh?.getElementById('main') || scriptOf(fresh) !== scriptOf(document)) {
      location.assign(at)
      return
    }
    // What is left is found again at its own address: there its answer can be changed.
    const own = document.querySelector('form[data-question]')?.getAttribute('action')
    if (push && own) history.replaceState(null, '', own)
    if (push) history.pushState(null, '', at)
    take(fresh)
    shown = here()
    arrive()
    dispatchEvent(new Event('pieceworth:shown'))
    if (push) scrollTo(0, 0)
  }

  const send = async (letter: Letter, near: Element | null): Promise<void> => {
    if (leaving) return
    leaving = true
    try {
      const answer = await deliver(letter, (told) => tell(told, near))
      // A refusal stands at the address of its question.
      const goesOn = answer.headers.get('content-location')
      await show(answer, goesOn !== null || answer.redirected, goesOn ?? answer.url)
    } catch {
      // It has arrived, and cannot be shown from here.
      location.assign(pileOf(letter.to) ?? location.href)
    } finally {
      leaving = false
    }
  }

  const visit = async (address: string, push: boolean): Promise<void> => {
    const answer = await fetch(address, { headers: { accept: 'text/html' } }).catch(() => null)
    if (answer?.ok) await show(answer, push)
    else location.assign(address)
  }

  document.addEventListener('submit', (event) => {
    const form = event.target as HTMLFormElement
    if (event.defaultPrevented || !travels(form)) return
    event.preventDefault()
    if (leaving) return
    const button = event.submitter
    button?.setAttribute('aria-disabled', 'true')
    const near = form.querySelector('.go') ?? form
    void send(letterOf(form, button), near)
  })

  document.addEventListener('click', (event) => {
    const link = event.target instanceof Element ? event.target.closest('a') : null
    const plain = event.button === 0 && !(event.metaKey || event.ctrlKey || event.shiftKey)
    if (!link || !plain || event.altKey || event.defaultPrevented || !leads(link)) return
    event.preventDefault()
    void visit(link.href, true)
  })

  // Going to a part of the page that is shown is told so too.
  addEventListener('popstate', () => {
    if (here() !== shown) void visit(location.href, false)
  })

  const left = unsent()
  if (left) void send(left, document.querySelector('#title'))
}

/** Answers and the buttons between them; what else is sent leads to a part of a page. */
export const travels = (form: HTMLFormElement): boolean =>
  form.elements.namedItem('idem') !== null &&
  (form.dataset.question !== undefined || form.querySelector('[data-act]') !== null)

const here = (): string => location.pathname + location.search

/** To a page of this pile, and not to a file or a part of this page. */
function leads({ href, target, download }: HTMLAnchorElement): boolean {
  const pile = pileOf(location.pathname)
  const { origin, pathname, hash } = new URL(href, location.href)
  return (
    pile !== undefined &&
    origin === location.origin &&
    (pathname === pile || pathname.startsWith(`${pile}/`)) &&
    !/\.\w+$|\/photos\//.test(pathname) &&
    !(target || download || hash)
  )
}

const scriptOf = (page: Document): string | null | undefined =>
  page.querySelector('script[defer]')?.getAttribute('src')

/** What the browser would send. */
function letterOf(form: HTMLFormElement, button: HTMLElement | null): Letter {
  const data = new FormData(form)
  if (button instanceof HTMLButtonElement && button.name) data.append(button.name, button.value)
  const to = form.getAttribute('action')!
  if (form.enctype === 'multipart/form-data') return { to, body: data }
  const words = [...data].map(([name, value]): [string, string] => [name, String(value)])
  return { to, body: new URLSearchParams(words).toString() }
}

/** Everything of the page but the line that is read aloud, which must stay to be heard. */
function take(fresh: Document): void {
  const live = document.getElementById('live')
  document.documentElement.lang = fresh.documentElement.lang
  document.title = fresh.title
  document.body.className = fresh.body.className
  for (const old of [...document.body.childNodes]) if (old !== live) old.remove()
  for (const node of [...fresh.body.childNodes]) {
    if (!(node instanceof Element && node.id === 'live')) live?.before(node)
  }
  for (const script of fresh.querySelectorAll<HTMLScriptElement>('script[defer]')) {
    const src = script.getAttribute('src')!
    if (src === scriptOf(document)) continue
    const again = document.createElement('script')
    again.src = src
    live?.after(again)
  }
}

/** Said beside what was pressed, and aloud. */
function tell(told: Told, near: Element | null): void {
  const live = document.getElementById('live')
  const sentence = live?.dataset[told]
  if (!live || !sentence) return
  live.textContent = sentence
  if (told === 'sent') return
  const line = document.getElementById('wire') ?? document.createElement('p')
  line.id = 'wire'
  line.className = told === 'sending' ? 'wire' : 'wire waits'
  line.textContent = sentence
  if (!line.isConnected) near?.after(line)
}

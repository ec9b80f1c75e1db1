import { shrink } from './smaller.client.ts'

/** As long as the reader may take for a photo, and the way there, ms; the words can be typed all the while. */
const patience = 65_000

/**
 * A label's photo is read as soon as it is chosen, and the page keeps its place. It sends the form that the
 * button would send, and takes from the answer what was read; all else stays as the visitor has it.
 */
export function readLabelPhotos(asked: HTMLFormElement): void {
  let reading: AbortController | null = null
  const stop = () => reading?.abort()

  const read = async () => {
    stop()
    const mine = new AbortController()
    reading = mine
    const slow = setTimeout(stop, patience)
    tell(asked, 'reading')
    const sent = words(asked)?.value
    const page = await send(asked, mine.signal).catch(() => null)
    clearTimeout(slow)
    if (reading !== mine) return
    reading = null
    if (page && takeOver(asked, page, sent)) return
    tell(asked, 'failed')
  }

  asked.addEventListener('change', ({ target }) => {
    if (isPhotoField(target) && target.files?.length) void read()
  })
  asked.addEventListener('click', (event) => {
    const button = event.target
    if (!(button instanceof HTMLButtonElement) || button.value !== 'read-label') return
    // Without any photo the page that comes back says what is missing.
    const photo = asked.querySelector<HTMLInputElement>('#field-photo')
    if (!photo?.files?.length && !asked.querySelector('.label-taken')) return
    event.preventDefault()
    void read()
  })
  // Whoever goes on meanwhile has answered.
  asked.addEventListener('submit', () => {
    stop()
    reading = null
  })
}

const isPhotoField = (target: EventTarget | null): target is HTMLInputElement =>
  target instanceof HTMLInputElement && target.id === 'field-photo'

const words = (inside: ParentNode) =>
  inside.querySelector<HTMLTextAreaElement>('textarea[name=words]')

/** The page that comes back; null where it is none. */
async function send(asked: HTMLFormElement, signal: AbortSignal): Promise<Document | null> {
  const body = new FormData(asked)
  const [photo] = asked.querySelector<HTMLInputElement>('#field-photo')?.files ?? []
  body.set('act', 'read-label')
  body.delete('photo')
  if (photo) body.set('photo', await shrink(photo))
  const address = asked.getAttribute('action')!
  const answer = await fetch(address, {
    method: 'POST',
    body,
    signal,
    headers: { accept: 'text/html' },
  })
  return new DOMParser().parseFromString(await answer.text(), 'text/html')
}

/** Puts what came back in its place. False where the page is another one. */
function takeOver(asked: HTMLFormElement, page: Document, sent: string | undefined): boolean {
  const here = asked.querySelector('#label-photo')
  const fresh = page.getElementById('label-photo')
  if (!here || !fresh) return false
  here.replaceWith(fresh)
  const refused = fresh.querySelector<HTMLElement>('#error-photo')
  if (!refused) fillIn(asked, page, sent)
  const found = refused ?? fresh.querySelector<HTMLElement>('#label-read')
  if (!found) return true
  found.tabIndex = -1
  found.focus()
  return true
}

/** The words that were read, unless somebody typed meanwhile; and that there are words, unless that was chosen otherwise. */
function fillIn(asked: HTMLFormElement, page: Document, sent: string | undefined): void {
  const field = words(asked)
  const read = words(page)
  if (!field || !read || field.value !== sent) return
  field.value = read.value
  field.rows = read.rows
  field.dispatchEvent(new Event('input', { bubbles: true }))
  const typed = page.querySelector('.typed-before')
  asked.querySelector('.typed-before')?.remove()
  if (typed) field.after(typed)
  if (asked.querySelector('input[name=found]:checked:not([value=words])')) {
    const says = page.querySelector<HTMLInputElement>('input[name=found][value=words]')
    if (!says?.checked) return
  }
  const found = asked.querySelector<HTMLInputElement>('input[name=found][value=words]')
  if (found && field.value !== '') found.checked = true
}

/** Says how it goes where the photo is, and aloud. */
function tell(asked: HTMLFormElement, how: 'reading' | 'failed'): void {
  const block = asked.querySelector<HTMLElement>('#label-photo')
  const line = asked.querySelector<HTMLElement>('#label-reading')
  if (!block || !line) return
  const sentence = block.dataset[how]!
  line.textContent = sentence
  line.hidden = false
  line.classList.toggle('refusal', how === 'failed')
  const aloud = document.getElementById('live')
  if (aloud) aloud.textContent = sentence
}

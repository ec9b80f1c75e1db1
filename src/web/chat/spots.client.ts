const form = document.querySelector<HTMLFormElement>('form[data-kind=spots]')
if (form) markSpots(form)

/**
 * Marks on photos, one tap each: the page sends the form that the button would send, with the very place, and
 * takes from the answer what is marked. What cannot be sent so is sent as the page without a script does.
 */
function markSpots(asked: HTMLFormElement): void {
  let busy = false
  asked.classList.add('spots-tapped')

  const change = async (changes: Readonly<Record<string, string>>, then: string | null) => {
    if (busy) return
    busy = true
    try {
      const page = await send(asked, changes)
      if (!takeOver(asked, page, then)) throw new Error('another page came back')
    } catch {
      fallBack(asked, changes)
    } finally {
      busy = false
    }
  }

  asked.addEventListener('click', (event) => {
    const { target } = event
    // Arrow keys choose a place with a click of their own, which has no pointer.
    if (isCell(target) && event.detail > 0) {
      event.preventDefault()
      void change({ tap: tapped(target, event), mark: 'yes' }, target.id)
      return
    }
    const button = target instanceof Element ? target.closest('button') : null
    if (!button || !['mark', 'unmark'].includes(button.name)) return
    if (button.name === 'mark' && !chosen(asked)) return
    event.preventDefault()
    void change({ [button.name]: button.value }, chosen(asked)?.id ?? null)
  })

  asked.addEventListener('keydown', (event) => {
    const { target, key } = event
    if (!isCell(target) || !['ArrowUp', 'ArrowDown', 'Enter'].includes(key)) return
    event.preventDefault()
    if (key === 'Enter') {
      target.checked = true
      void change({ mark: 'yes' }, target.id)
      return
    }
    const grid = target.parentElement!
    const cells = [...grid.querySelectorAll('input')]
    const step = Number(grid.dataset.columns) * (key === 'ArrowUp' ? -1 : 1)
    const next = cells[cells.indexOf(target) + step]
    if (!next) return
    next.checked = true
    next.focus()
  })
}

const isCell = (target: EventTarget | null): target is HTMLInputElement =>
  target instanceof HTMLInputElement && target.name === 'cell'

const chosen = (asked: HTMLFormElement): HTMLInputElement | null =>
  asked.querySelector<HTMLInputElement>('input[name=cell]:checked')

/** "photo:x:y", where on the picture the pointer was. */
function tapped(cell: HTMLInputElement, { clientX, clientY }: MouseEvent): string {
  const grid = cell.parentElement!
  const { left, top, width, height } = grid.getBoundingClientRect()
  const share = (along: number, of: number) => Math.min(1, Math.max(0, along / of)).toFixed(3)
  return [grid.dataset.spotPhoto, share(clientX - left, width), share(clientY - top, height)].join(
    ':',
  )
}

async function send(
  asked: HTMLFormElement,
  changes: Readonly<Record<string, string>>,
): Promise<Document> {
  const body = new URLSearchParams()
  for (const [name, value] of new FormData(asked)) body.append(name, String(value))
  for (const [name, value] of Object.entries(changes)) body.set(name, value)
  const answer = await fetch(asked.getAttribute('action')!, {
    method: 'POST',
    body,
    headers: { accept: 'text/html' },
  })
  return new DOMParser().parseFromString(await answer.text(), 'text/html')
}

/** Puts what came back in its place, and reading goes on where it was. False where the page is another one. */
function takeOver(asked: HTMLFormElement, page: Document, then: string | null): boolean {
  const here = asked.querySelector('#spots')
  const fresh = page.getElementById('spots')
  if (!here || !fresh) return false
  const unfolded = [...here.querySelectorAll('details')].map(({ open }) => open)
  for (const [n, fold] of [...fresh.querySelectorAll('details')].entries()) {
    fold.open ||= unfolded[n] ?? false
  }
  here.replaceWith(fresh)
  const place = then
    ? document.getElementById(then)
    : fresh.querySelector<HTMLElement>('#spots-told')
  if (place) {
    if (place.tabIndex < 0) place.tabIndex = -1
    place.focus({ preventScroll: true })
  }
  const aloud = document.getElementById('live')
  const told = fresh.querySelector('#error-spots, #spots-told')
  if (aloud && told) aloud.textContent = told.textContent
  return true
}

/** The whole page, as without a script. */
function fallBack(asked: HTMLFormElement, changes: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries(changes)) {
    const field = document.createElement('input')
    field.type = 'hidden'
    field.name = name
    field.value = value
    asked.append(field)
  }
  asked.requestSubmit()
}

/**
 * A tap on an answer that needs no second thought sends it. Only a finger, a pen or a mouse taps: arrow keys walk
 * through the answers, and what a screen reader presses chooses without sending.
 */

/** The sentence that stands above the answers, to be shown where this script is there. */
const hintId = 'tap-hint'

let tapped = false

export function sendByTap(form: HTMLFormElement): void {
  if (form.dataset.tap === undefined) return
  tellOf(form)
  let pressed: Element | null = null
  form.addEventListener('pointerdown', ({ target, isPrimary, button, pressure }) => {
    // Presses that a program makes for its user have no pressure; those of hands do (Pointer Events, "pressure").
    pressed = isPrimary && button === 0 && pressure > 0 ? optionAt(target) : null
  })
  form.addEventListener('click', ({ target, detail }) => {
    const option = optionAt(target)
    if (!option || option !== pressed || detail === 0) return
    pressed = null
    // The label is pressed first, and what it chooses is chosen after that.
    setTimeout(() => send(form, option))
  })
}

/** After a tap: what it said and where to change it is read aloud, once the page that follows is there. */
export function tellTapped(): void {
  if (!tapped) return
  tapped = false
  const told = document.getElementById('just')?.dataset.told
  if (told) document.getElementById('live')!.textContent = told
}

function tellOf(form: HTMLFormElement): void {
  const hint = document.getElementById(hintId)
  const group = form.querySelector('#field-value')
  if (!hint || !group) return
  hint.hidden = false
  const before = group.getAttribute('aria-describedby') ?? ''
  group.setAttribute('aria-describedby', `${before} ${hintId}`)
}

/** Pointers and clicks are told of elements alone. */
const optionAt = (target: EventTarget | null) => (target as Element).closest('[data-sends]')

function send(form: HTMLFormElement, option: Element): void {
  const button = form.querySelector<HTMLButtonElement>('.go button[value=answer]')
  const note = form.querySelector<HTMLTextAreaElement>('[name=note]')
  const ticked = form.querySelectorAll('[name=value]:checked')
  // One answer alone, and nothing begun beside it that would be lost.
  if (!button || note?.value || ticked.length !== 1) return
  if (!option.contains(ticked[0]!)) return
  tapped = true
  form.requestSubmit(button)
}

/** Arrow keys go through a list of links, digits decide of the garment that is focused. All works without it too. */

const typesText = (target: Element): boolean =>
  target.closest('textarea, select, input:not([type=submit]):not([type=button])') !== null

function alongList(event: KeyboardEvent, target: Element): void {
  const list = target.closest('[data-arrows]')
  if (!list) return
  const links = [...list.querySelectorAll<HTMLAnchorElement>('a[href]')]
  const at = links.indexOf(target.closest('a') as HTMLAnchorElement)
  const to: Readonly<Record<string, number>> = {
    ArrowDown: at + 1,
    ArrowUp: at - 1,
    Home: 0,
    End: links.length - 1,
  }
  const link = links[to[event.key] ?? -1]
  if (at < 0 || !link) return
  event.preventDefault()
  link.focus()
}

/** The nth verdict of the garment that holds the focus; one that wants a reason leads to where it is written. */
function decide(event: KeyboardEvent, target: Element): void {
  const buttons = target
    .closest('[data-garment]')
    ?.querySelectorAll<HTMLButtonElement>('.decision button.verdict')
  const button = buttons?.[Number(event.key) - 1]
  if (!button?.form) return
  event.preventDefault()
  const reason = button.form.querySelector<HTMLTextAreaElement>('textarea')
  if (button.hasAttribute('data-reasoned') && reason?.value.trim() === '') {
    button.closest('details')?.setAttribute('open', '')
    reason.focus()
    return
  }
  button.form.requestSubmit(button)
}

document.addEventListener('keydown', (event) => {
  const { target } = event
  if (!(target instanceof Element) || event.ctrlKey || event.metaKey || event.altKey) return
  if (typesText(target)) return
  alongList(event, target)
  if (/^[1-9]$/.test(event.key)) decide(event, target)
})

/** A garment that the address names takes the focus, so that keys go on from there. */
function focusNamed(): void {
  const named = document.getElementById(location.hash.slice(1))
  if (!named?.matches('[data-garment]')) return
  if (named instanceof HTMLDetailsElement) named.open = true
  named.tabIndex = -1
  named.focus({ preventScroll: true })
}

focusNamed()
addEventListener('hashchange', focusNamed)

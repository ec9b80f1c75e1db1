/**
 * On every page of the customer's, before anything is drawn: where the page stands in a frame that the element
 * made, it is dressed as the page around it wishes, and tells that page how high it is. Elsewhere nothing happens.
 */

import { dress } from './dress.ts'
import { pilePath, type Shown, type Told } from './spoken.ts'

const told = window.parent === window ? null : toldHere()
if (told) {
  const root = document.documentElement
  root.dataset.framed = told.later ? 'later' : 'first'
  // Kept in the frame's own name: pages in it follow one another without any storage.
  window.name = JSON.stringify({ ...told, later: true } satisfies Told)
  dressUp(told)
  addEventListener('DOMContentLoaded', () => follow(told))
}

function toldHere(): Told | null {
  try {
    const told = JSON.parse(window.name) as Told
    return typeof told.around === 'string' && /^https?:/.test(told.around) ? told : null
  } catch {
    return null
  }
}

function dressUp(theme: Told): void {
  const { style } = document.documentElement
  const { tokens, dark } = dress(theme, matchMedia('(prefers-color-scheme: dark)').matches)
  if (dark !== null) {
    preferDark(dark)
    style.colorScheme = dark ? 'dark' : 'light'
  }
  for (const [name, value] of Object.entries(tokens)) style.setProperty(name, value)
}

/** The stylesheet's own dark colours, or its light ones, whatever the machine prefers. */
function preferDark(dark: boolean): void {
  for (const sheet of document.styleSheets) {
    for (const rule of sheet.cssRules) {
      if (!(rule instanceof CSSMediaRule)) continue
      const { media } = rule
      const scheme = /prefers-color-scheme: (dark|light)/.exec(media.mediaText)?.[1]
      if (scheme) media.mediaText = (scheme === 'dark') === dark ? 'screen' : 'not all'
    }
  }
}

/** Every change of height is told. Only a page that the shop allows stands around us: `frame-ancestors`. */
function follow({ around, later }: Told): void {
  let going = later === true
  const tell = (first: boolean): void => {
    const shown: Shown = {
      height: document.body.getBoundingClientRect().height,
      pile: pilePath.exec(location.pathname)?.[0] ?? null,
      lost: isLost(),
      title: document.title,
      later: going && first,
    }
    parent.postMessage({ pieceworth: shown }, around)
  }
  // Browsers do not watch sizes in a frame that takes no room yet.
  tell(true)
  new ResizeObserver(() => tell(false)).observe(document.body)
  addEventListener('pieceworth:shown', () => {
    going = true
    tell(true)
  })
}

const isLost = (): boolean =>
  ['link_unknown', 'link_expired'].includes(
    document.querySelector<HTMLElement>('[data-code]')?.dataset.code ?? '',
  )

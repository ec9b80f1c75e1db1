/**
 * `<pieceworth-intake>`: the intake on any page. What stands inside it is shown until the frame has said that it is
 * there, so without a script, or where the shop does not allow this page, a plain link is left.
 */

import { pilePath, type Shown, type Theme, type Told } from './spoken.ts'

const { src } = document.currentScript as HTMLScriptElement
const home = new URL('.', src)

const dress: readonly (keyof Theme)[] = ['accent', 'ground', 'font', 'corner']

class Intake extends HTMLElement {
  static readonly observedAttributes = ['lang', 'name', ...dress]

  private frame: HTMLIFrameElement | null = null
  private readonly hear = (event: MessageEvent) => this.heard(event)

  connectedCallback(): void {
    addEventListener('message', this.hear)
    this.style.display = 'block'
    this.open()
  }

  disconnectedCallback(): void {
    removeEventListener('message', this.hear)
    this.frame?.remove()
    this.frame = null
  }

  attributeChangedCallback(): void {
    if (this.frame) this.open()
  }

  private open(): void {
    this.frame?.remove()
    const frame = document.createElement('iframe')
    const told: Record<string, string> = { around: location.origin }
    for (const each of dress) {
      const value = this.getAttribute(each)
      if (value) told[each] = value
    }
    frame.name = JSON.stringify(told satisfies Partial<Told>)
    frame.title = this.textContent?.trim() ?? ''
    // It has its size before anybody sees it, and takes no room until it has something to show.
    frame.style.cssText = 'display:block;width:100%;height:0;border:0;visibility:hidden'
    const kept = pilePath.exec(this.keep() ?? '')?.[0]
    const language = this.getAttribute('lang')
    frame.src = new URL(kept?.slice(1) ?? (language ? `?lang=${language}` : ''), home).href
    this.frame = frame
    this.append(frame)
  }

  private heard({ origin, source, data }: MessageEvent): void {
    const frame = this.frame
    const shown = data?.pieceworth as Shown | undefined
    if (!frame || !shown || origin !== home.origin || source !== frame.contentWindow) return
    if (shown.lost) this.keep(null)
    else if (shown.pile) this.keep(shown.pile)
    for (const each of this.children) if (each !== frame) (each as HTMLElement).hidden = true
    frame.title = shown.title
    frame.style.visibility = ''
    frame.style.height = `${Math.ceil(shown.height)}px`
    // The next page begins at its top; a reader who sees that already is not moved.
    if (shown.later && frame.getBoundingClientRect().top < 0) frame.scrollIntoView()
  }

  /** The pile's path, in the storage of the page around; a page that has none resumes nothing. */
  private keep(path?: string | null): string | null {
    const key = `pieceworth ${home.href} ${this.getAttribute('name') ?? ''}`
    try {
      if (path) localStorage.setItem(key, path)
      else if (path === null) localStorage.removeItem(key)
      else return localStorage.getItem(key)
    } catch {}
    return null
  }
}

if (!customElements.get('pieceworth-intake')) customElements.define('pieceworth-intake', Intake)

import { around } from './sheet-around.ts'
import { glassOver, magnified, type Place } from './sheet-glass.client.ts'

const form = document.querySelector<HTMLFormElement>('form[data-sheet]')
if (form) markCorners(form)

/** A corner as the form's numbers hold it, in shares; `fine`: it was placed more exactly than by a tap. */
interface Corner {
  readonly x: number
  readonly y: number
  readonly fine: boolean
}

/**
 * Four corners on a photo: a tap sets one, handles and a magnifying glass move them, keys too. The form's numbers
 * hold them, so that what is sent is what the page without a script sends.
 */
function markCorners(asked: HTMLFormElement): void {
  const stage = asked.querySelector<HTMLElement>('.sheet-stage')!
  const photo = stage.querySelector<HTMLInputElement>('input[type=image]')!
  const outline = stage.querySelector('svg')!
  const told = asked.querySelector<HTMLElement>('#sheet-told')!
  const coarse = asked.querySelector<HTMLInputElement>('input[name=coarse]')!
  const fields = (name: 'x' | 'y') => [
    ...asked.querySelectorAll<HTMLInputElement>(`input[type=number][name=${name}]`),
  ]
  const [xs, ys] = [fields('x'), fields('y')]
  const tall = Number(stage.dataset.height) / Number(stage.dataset.width)
  const left = (stage.dataset.left ?? '').split('|')

  let corners: readonly Corner[] = read(coarse.value === '')
  let active = corners.length - 1
  const before: (readonly Corner[])[] = []

  const glass = glassOver(photo, photo.src)
  const hint = document.createElement('p')
  hint.className = 'hint sheet-glass-hint'
  hint.textContent = stage.dataset.glass ?? ''
  stage.parentElement!.after(glass.element, hint)
  const handles = xs.map((_, n) => handle(n))
  asked.classList.add('sheet-live')
  draw()

  function read(fine: boolean): readonly Corner[] {
    return xs.flatMap((field, n): Corner[] => {
      const [x, y] = [field.valueAsNumber / 100, ys[n]!.valueAsNumber / 100]
      return x >= 0 && x <= 1 && y >= 0 && y <= 1 ? [{ x, y, fine }] : []
    })
  }

  function change(next: readonly Corner[], step = true): void {
    if (step) before.push(corners)
    corners = next
    draw()
  }

  /** Puts a corner elsewhere, never off the photo. */
  function put(n: number, x: number, y: number, fine: boolean, step = true): void {
    const within = (one: number) => Math.min(1, Math.max(0, one))
    const corner = { x: within(x), y: within(y), fine }
    active = n
    change(
      n < corners.length
        ? corners.map((one, at) => (at === n ? corner : one))
        : [...corners, corner],
      step,
    )
  }

  function draw(): void {
    for (const [n, field] of xs.entries()) {
      const corner = corners[n]
      const text = (share: number | undefined) =>
        share === undefined ? '' : String(Math.round(share * 100_000) / 1000)
      if (document.activeElement !== field) field.value = text(corner?.x)
      if (document.activeElement !== ys[n]) ys[n]!.value = text(corner?.y)
      handles[n]!.hidden = !corner
      handles[n]!.classList.toggle('sheet-active', n === active)
      if (!corner) continue
      handles[n]!.style.left = `${corner.x * 100}%`
      handles[n]!.style.top = `${corner.y * 100}%`
    }
    coarse.value = corners.every(({ fine }) => fine) ? '' : 'yes'
    const line = around(corners.map(({ x, y }): Place => [x, y]))
    const points = line.map(([x, y]) => `${1000 * x},${1000 * tall * y}`).join(' ')
    for (const shape of outline.querySelectorAll('polygon')) shape.setAttribute('points', points)
    for (const ring of outline.querySelectorAll('g')) ring.remove()
    told.textContent = left[4 - corners.length] ?? ''
    const at = corners[active]
    glass.element.hidden = hint.hidden = !at
    if (!at) return
    const place = line.findIndex(([x, y]) => x === at.x && y === at.y)
    const beside = line.length > 2 ? [line.at(place - 1)!, line[(place + 1) % line.length]!] : []
    glass.show([at.x, at.y], beside)
  }

  function handle(n: number): HTMLButtonElement {
    const button = document.createElement('button')
    button.type = 'button'
    button.className = 'sheet-handle'
    button.setAttribute('aria-label', (stage.dataset.corner ?? '').replace('{n}', String(n + 1)))
    button.addEventListener('focus', () => {
      if (n >= corners.length) return
      active = n
      draw()
    })
    button.addEventListener('keydown', (event) => {
      const step = (event.shiftKey ? 10 : 1) / 1000
      const way = ways[event.key]
      const corner = corners[n]
      if (!way || !corner) return
      event.preventDefault()
      put(n, corner.x + way[0] * step, corner.y + (way[1] * step) / tall, true, !event.repeat)
      told.textContent = where(n)
    })
    drag(button, (by) => {
      const { width, height } = photo.getBoundingClientRect()
      return { n, dx: by[0] / width, dy: by[1] / height, fine: width >= fineFrom }
    })
    stage.append(button)
    return button
  }

  function where(n: number): string {
    const text = (share: number) => String(Math.round(share * 1000) / 10)
    return (stage.dataset.told ?? '')
      .replace('{n}', String(n + 1))
      .replace('{x}', text(corners[n]!.x))
      .replace('{y}', text(corners[n]!.y))
  }

  interface Move {
    readonly n: number
    readonly dx: number
    readonly dy: number
    readonly fine: boolean
  }

  /** A finger or a mouse that drags `element` moves a corner by what `moved` makes of its way, px. */
  function drag(element: HTMLElement, moved: (by: Place) => Move): void {
    element.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return
      const [fromX, fromY] = [event.clientX, event.clientY]
      const start = corners[moved([0, 0]).n]
      if (!start) return
      const earlier = corners
      element.setPointerCapture(event.pointerId)
      let isMoved = false
      const move = (now: PointerEvent): void => {
        const { n, dx, dy, fine } = moved([now.clientX - fromX, now.clientY - fromY])
        isMoved ||= Math.abs(now.clientX - fromX) + Math.abs(now.clientY - fromY) > 1
        if (isMoved) put(n, start.x + dx, start.y + dy, fine, false)
      }
      const end = (): void => {
        element.removeEventListener('pointermove', move)
        element.removeEventListener('pointerup', end)
        element.removeEventListener('pointercancel', end)
        if (isMoved) before.push(earlier)
      }
      element.addEventListener('pointermove', move)
      element.addEventListener('pointerup', end)
      element.addEventListener('pointercancel', end)
    })
  }

  // What is dragged under the glass moves as a map does: the place in its middle is the corner's.
  drag(glass.element, (by) => {
    const { width, height } = photo.getBoundingClientRect()
    const part = (one: number, of: number) => -one / (of * magnified)
    return { n: active, dx: part(by[0], width), dy: part(by[1], height), fine: true }
  })

  photo.addEventListener('click', (event) => {
    event.preventDefault()
    const { left: x, top: y, width, height } = photo.getBoundingClientRect()
    const at: Place = [(event.clientX - x) / width, (event.clientY - y) / height]
    const away = corners.map((one) => Math.hypot(one.x - at[0], (one.y - at[1]) * tall))
    const n = corners.length < 4 ? corners.length : away.indexOf(Math.min(...away))
    put(n, at[0], at[1], width >= fineFrom)
    handles[n]!.focus({ preventScroll: true })
  })

  for (const field of [...xs, ...ys])
    field.addEventListener('input', () => {
      const next = read(true)
      if (next.length < corners.length) return
      active = Math.min(Math.max(xs.indexOf(field), ys.indexOf(field)), next.length - 1)
      change(next)
    })

  asked.addEventListener('click', (event) => {
    const { target } = event
    const button =
      target instanceof Element ? target.closest<HTMLElement>('[data-sheet-act]') : null
    const act = button?.dataset.sheetAct ?? ''
    if (!['last', 'clear', 'frame'].includes(act)) return
    event.preventDefault()
    if (act === 'last') {
      corners = before.pop() ?? corners.slice(0, -1)
      active = Math.min(active, corners.length - 1)
      draw()
      return
    }
    active = act === 'frame' ? 0 : -1
    change(act === 'frame' ? begun : [])
    if (act === 'frame') handles[0]!.focus()
  })
}

/** A picture shown at least as wide, px of the page, can be pointed at exactly. */
const fineFrom = 900

/** A rectangle to begin with, for who marks by keys. */
const begun: readonly Corner[] = [
  { x: 0.35, y: 0.35, fine: false },
  { x: 0.65, y: 0.35, fine: false },
  { x: 0.65, y: 0.65, fine: false },
  { x: 0.35, y: 0.65, fine: false },
]

const ways: Readonly<Record<string, Place>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

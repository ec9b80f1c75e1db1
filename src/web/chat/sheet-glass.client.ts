/** A magnifying glass over a picture: shows the place in its middle so many times as large as the picture is shown. */
export interface Glass {
  readonly element: HTMLElement
  /** Draws what lies about a place, in shares of the picture, with lines from it to other places. */
  show(at: Place, lines: readonly Place[]): void
}

export type Place = readonly [x: number, y: number]

export const magnified = 4

/** `shown` is the picture as it stands on the page. */
export function glassOver(shown: HTMLElement, src: string): Glass {
  const element = document.createElement('div')
  element.className = 'sheet-glass'
  element.hidden = true
  const canvas = document.createElement('canvas')
  canvas.setAttribute('aria-hidden', 'true')
  element.append(canvas)
  const picture = new Image()
  let again = () => {}
  picture.addEventListener('load', () => again())
  picture.src = src
  new ResizeObserver(() => again()).observe(element)

  const show = ([x, y]: Place, lines: readonly Place[]): void => {
    again = () => show([x, y], lines)
    element.hidden = false
    const [wide, high] = [element.clientWidth, element.clientHeight]
    const pen = canvas.getContext('2d')
    if (!pen || wide === 0 || !picture.naturalWidth) return
    const sharp = window.devicePixelRatio || 1
    canvas.width = Math.round(wide * sharp)
    canvas.height = Math.round(high * sharp)
    pen.scale(sharp, sharp)
    const { width, height } = shown.getBoundingClientRect()
    const [large, tall] = [width * magnified, height * magnified]
    const [left, top] = [wide / 2 - x * large, high / 2 - y * tall]
    pen.drawImage(picture, left, top, large, tall)
    const style = getComputedStyle(element)
    const stroke = (path: readonly Place[], under: string, over: string): void => {
      for (const [colour, size] of [
        [under, 4],
        [over, 1.5],
      ] as const) {
        pen.strokeStyle = style.getPropertyValue(colour)
        pen.lineWidth = size
        pen.beginPath()
        for (const [n, [u, v]] of path.entries()) n === 0 ? pen.moveTo(u, v) : pen.lineTo(u, v)
        pen.stroke()
      }
    }
    const middle: Place = [wide / 2, high / 2]
    for (const [u, v] of lines)
      stroke([middle, [left + u * large, top + v * tall]], '--paper', '--ink')
    const arm = 18
    for (const [u, v] of [
      [arm, 0],
      [0, arm],
    ] as const)
      stroke(
        [
          [middle[0] - u, middle[1] - v],
          [middle[0] + u, middle[1] + v],
        ],
        '--paper',
        '--madder',
      )
  }
  return { element, show }
}

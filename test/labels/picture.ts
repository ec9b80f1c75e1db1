import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { type Contents, coveredLine } from './contents.ts'
import { drawGlyph } from './glyphs.ts'
import { grounds, type Look } from './look.ts'
import type { Printed } from './setting.ts'
import { clothOf, groundOf, threadMask, wornMask } from './textures.ts'

const fonts = {
  'roboto-condensed': [400, 700],
  'archivo-narrow': [400, 700],
  arimo: [400, 700],
  'noto-sans': [400, 700],
  oswald: [400, 700],
  tinos: [400, 700],
  'courier-prime': [400, 700],
  vt323: [400],
  kosugi: [400],
} as const

/** A photo of a label before light and lens have had their part in it. */
export interface Picture {
  readonly image: Buffer
  /** One em of its letters, px. */
  readonly em: number
  /** Height of its capital letters, px. */
  readonly capital: number
}

/** The faces of a package, with their files in them. */
function facesOf(name: string, weight: number): string {
  const sheet = new URL(import.meta.resolve(`@fontsource/${name}/${weight}.css`))
  return readFileSync(sheet, 'utf8').replaceAll(
    /url\((\.\/files\/[^)]+\.woff2)\) format\('woff2'\), url\([^)]+\) format\('woff'\)/g,
    (_, path: string) =>
      `url(data:font/woff2;base64,${readFileSync(new URL(path, sheet)).toString('base64')}) format('woff2')`,
  )
}

const plain = `
  * { box-sizing: border-box; margin: 0 }
  .photo { position: fixed; inset: 0; overflow: hidden }
  .photo > .over { position: absolute; inset: 0 }
  .place { position: absolute; left: 50%; top: 50%; width: max-content }
  .label { position: relative; box-shadow: 0 .1em .5em rgb(0 0 0 / .45), 0 0 .12em rgb(0 0 0 / .4) }
  .words { position: relative; display: flex; gap: 1.2em }
  .column { flex: none }
  .line { white-space: pre }
  .row { display: flex; justify-content: space-between; gap: 2em }
  .large { font-size: 1.5em; font-weight: 700 }
  .gap { height: .7em }
  .glyphs { display: flex; gap: .45em; padding: .25em 0 }
  .glyphs svg { height: 1.7em; width: 1.7em; fill: none; stroke: currentColor; stroke-width: 2.2 }
  .glyphs .dot { fill: currentColor; stroke: none }
  .centred { text-align: center }
  .centred .glyphs { justify-content: center }
  .ghost { position: absolute; inset: 0; transform: scaleX(-1) translateY(.5em); opacity: .1; filter: blur(.06em) }
  .seam { position: absolute; left: 0; right: 0; top: .35em; border-top: .09em dashed }
  .cover { position: absolute }
`

/** A page that holds every font; pictures are taken on it one after the other. */
export async function openEasel(browser: Browser): Promise<Page> {
  const page = await browser.newPage()
  const faces = Object.entries(fonts).flatMap(([name, weights]) =>
    weights.map((weight) => facesOf(name, weight)),
  )
  await page.setContent(`<style>${faces.join('\n')}${plain}</style><body></body>`)
  return page
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')

const lineOf = (line: Printed, hides: boolean): string => {
  const mark = hides ? ' hides' : ''
  if (line.is === 'gap') return '<div class="gap"></div>'
  if (line.is === 'glyphs')
    return `<div class="glyphs">${line.glyphs.map(drawGlyph).join('')}</div>`
  if (line.is === 'row')
    return `<div class="row${mark}"><span>${escaped(line.name)}</span><span>${escaped(line.percent)}</span></div>`
  return `<div class="line ${line.is}${mark}"><span>${escaped(line.text)}</span></div>`
}

function labelOf(contents: Contents, look: Look): string {
  const { cloth, ink } = grounds[look.ground]
  const hidden = look.cover ? coveredLine(contents) : undefined
  const columns = contents.columns
    .map(
      (lines) =>
        `<div class="column">${lines.map((line) => lineOf(line, line === hidden)).join('')}</div>`,
    )
    .join('')
  const masks = [look.worn ? wornMask(look.seed) : '', look.threads ? threadMask() : ''].join('')
  const family = `'${look.font}', 'Noto Sans', 'Kosugi'`
  const style = [
    `font: ${look.bold ? 700 : 400} 1em/${look.leading} ${family}`,
    `letter-spacing: ${look.spacing}em`,
    `padding: 1.3em .9em 1em`,
    `color: ${ink}`,
    groundOf(look, cloth),
  ].join(';')
  const words = `<div class="words" style="opacity: ${look.ink};${masks}">${columns}</div>`
  const ghost = look.ghost ? `<div class="ghost">${columns.replaceAll('hides', '')}</div>` : ''
  return `<div class="label ${look.centred ? 'centred' : ''}" style="${style}">
    <div class="seam" style="color: ${look.cloth.colour}"></div>${ghost}${words}${coverOf(look)}</div>`
}

function coverOf({ cover, cloth }: Look): string {
  if (!cover) return ''
  if (cover.by === 'fold')
    return `<div class="cover" style="left: -.4em; right: -.4em; height: 1.7em; ${clothOf(cloth)};
      box-shadow: 0 .12em .3em rgb(0 0 0 / .55), inset 0 -.3em .5em rgb(0 0 0 / .3), inset 0 .3em .5em rgb(255 255 255 / .12)"></div>`
  const round = cover.from === 'left' ? '1em 45% 45% 1em / 50%' : '45% 1em 1em 45% / 50%'
  const nail = cover.from === 'left' ? 'right' : 'left'
  return `<div class="cover" style="${cover.from}: -30em; height: 4.2em; border-radius: ${round};
      background: linear-gradient(180deg, #e8b99c, #d99f80 45%, #a96f55);
      box-shadow: 0 .25em .6em rgb(0 0 0 / .5)">
      <div style="position: absolute; ${nail}: .35em; top: .8em; width: 2.8em; height: 2.6em; border-radius: 45%;
        background: linear-gradient(160deg, #f3d3c4, #e0ad99); box-shadow: inset 0 0 .15em #a97660"></div></div>`
}

const least = { capital: 18 }
const most = { capital: 78, long: 3000 }

/** Takes the picture, as large as its letters need. */
export async function takePicture(page: Page, contents: Contents, look: Look): Promise<Picture> {
  const turned = `perspective(70em) rotateX(${look.pitch}deg) rotateY(${look.yaw}deg) rotateZ(${look.tilt}deg)`
  const html = `<div class="photo" style="font-size: 24px; ${clothOf(look.cloth)}">
    <div class="place"><div style="transform: ${turned}">${labelOf(contents, look)}</div></div></div>`
  const { box, capital } = await page.evaluate(
    async ({ body, finger }) => {
      document.body.innerHTML = body
      await document.fonts.ready
      const label = document.querySelector<HTMLElement>('.label')!
      const hides = label.querySelector<HTMLElement>('.hides')
      const cover = label.querySelector<HTMLElement>('.cover')
      if (cover && hides) {
        const words = label.querySelector<HTMLElement>('.words')!
        const middle = words.offsetTop + hides.offsetTop + hides.offsetHeight / 2
        cover.style.top = `${(middle - cover.offsetHeight / 2) / 24}em`
        if (finger) {
          const spans = [...hides.querySelectorAll('span')]
          const last = spans.at(-1)!
          const from = words.offsetLeft + spans[0]!.offsetLeft
          const to = words.offsetLeft + last.offsetLeft + last.offsetWidth
          const seen = finger.shows * (to - from)
          const reach = finger.from === 'left' ? to - seen : label.offsetWidth - from - seen
          cover.style.width = `${30 + reach / 24}em`
        }
      }
      const { width, height } = label.getBoundingClientRect()
      const brush = document.createElement('canvas').getContext('2d')!
      brush.font = `100px ${getComputedStyle(label).fontFamily}`
      return {
        box: { width: width / 24, height: height / 24 },
        capital: brush.measureText('E').actualBoundingBoxAscent / 100,
      }
    },
    { body: html, finger: look.cover?.by === 'finger' ? look.cover : null },
  )

  const upright = box.height >= box.width
  const sides = (long: number) => {
    const short = Math.round(long / look.shape)
    return upright ? { width: short, height: long } : { width: long, height: short }
  }
  const emFor = (long: number, fill: number) =>
    fill * Math.min(sides(long).width / box.width, sides(long).height / box.height)
  const fitting = Math.min(emFor(look.long, look.fill), most.capital / capital)
  // Letters too small to read are brought nearer, and then the photo is a larger one.
  const needed = Math.max(fitting, least.capital / capital)
  const long = Math.min(most.long, Math.max(look.long, Math.ceil(needed / emFor(1, 0.94))))
  const em = Math.min(needed, emFor(long, 0.94))
  const { width, height } = sides(long)

  await page.setViewportSize({ width, height })
  const room = { x: (width - box.width * em) / 2, y: (height - box.height * em) / 2 }
  const at = `translate(-50%, -50%) translate(${look.off.x * room.x}px, ${look.off.y * room.y}px)`
  await page.evaluate(
    ({ em, at }) => {
      document.querySelector<HTMLElement>('.photo')!.style.fontSize = `${em}px`
      document.querySelector<HTMLElement>('.place')!.style.transform = at
    },
    { em, at },
  )
  const image = await page.screenshot({ type: 'jpeg', quality: 98 })
  return { image, em, capital: capital * em }
}

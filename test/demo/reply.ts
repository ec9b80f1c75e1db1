import sharp from 'sharp'
import type { Fields } from '../help/walker.ts'
import { type DemoGarment, pileAnswers } from './pile.ts'

interface Asked {
  readonly id: string
  readonly kind: string
  readonly optional: boolean
}

/** What the invented customer sends for a question of the pile (`garment` null) or of a garment. */
export function replyOf(
  { id, kind, optional }: Asked,
  garment: DemoGarment | null,
  ofPile: Readonly<Record<string, Fields>> = pileAnswers,
): Fields {
  if (garment && id === 'name') return { value: garment.name }
  const answer = (garment?.answers ?? ofPile)[id]
  if (answer) return answer
  if (optional) return { act: 'skip' }
  if (kind === 'confirm') return { value: 'yes' }
  return { act: 'ask', note: 'We are not sure. Could you look at it?' }
}

/** Laid flat: body and sleeves, hem down. */
const shirt =
  'M360 110 Q450 150 540 110 L640 150 L760 330 L680 390 L620 300 L622 640 Q450 652 278 640 L280 300 L220 390 L140 330 L260 150 Z'

const rows = Array.from({ length: 11 }, (_, n) => 110 + 52 * n)
const columns = Array.from({ length: 13 }, (_, n) => 120 + 52 * n)
/** What a pattern is drawn with: white lines both ways, or a yellow sun on the chest. */
const prints: Readonly<Record<string, string>> = {
  'stripe-check': `<g stroke="#f4f1ea" stroke-opacity=".75" stroke-width="16">${rows.map((y) => `<path d="M0 ${y} H900"/>`).join('')}${columns.map((x) => `<path d="M${x} 0 V700"/>`).join('')}</g>`,
  single:
    '<g stroke="none"><circle cx="450" cy="330" r="86" fill="#ecc63f"/><path d="M370 430 h160 v34 h-160 Z" fill="#ecc63f"/><circle cx="450" cy="330" r="52" fill="#b3282d"/></g>',
}

/** A photo, as a phone would take it, of a garment of that colour and pattern on a floor. */
export function photoOf({ photo, answers }: DemoGarment): Promise<Buffer> {
  const [r, g, b] = photo ?? [120, 120, 120]
  const print = prints[String(answers.pattern?.value)] ?? ''
  const floor = 0.2126 * r + 0.7152 * g + 0.0722 * b > 130 ? '#5b4636' : '#cdbfa8'
  const drawn = `<svg xmlns="http://www.w3.org/2000/svg" width="900" height="700">
    <defs>
      <filter id="grain" x="0" y="0" width="100%" height="100%">
        <feTurbulence type="fractalNoise" baseFrequency=".8" numOctaves="2" seed="7"/>
        <feColorMatrix values="1 0 0 0 0 1 0 0 0 0 1 0 0 0 0 0 0 0 0 .14"/>
      </filter>
      <linearGradient id="light" x1="0" y1="0" x2="1" y2="1">
        <stop offset="0" stop-color="#fff" stop-opacity=".14"/>
        <stop offset=".55" stop-color="#000" stop-opacity="0"/>
        <stop offset="1" stop-color="#000" stop-opacity=".18"/>
      </linearGradient>
      <clipPath id="shirt"><path d="${shirt}"/></clipPath>
    </defs>
    <rect width="900" height="700" fill="${floor}"/>
    <path d="${shirt}" fill="#000" opacity=".3" transform="translate(7 9)"/>
    <path d="${shirt}" fill="rgb(${r} ${g} ${b})"/>
    <g clip-path="url(#shirt)" fill="none" stroke="#000" stroke-opacity=".2" stroke-width="4">
      ${print}
      <path d="M280 300 Q300 480 278 640 M620 300 Q600 480 622 640"/>
      <path d="M360 110 Q450 176 540 110" stroke-width="6"/>
      <path d="M340 420 Q400 470 380 590 M560 380 Q520 440 540 560" stroke-opacity=".1" stroke-width="9"/>
    </g>
    <rect width="900" height="700" fill="url(#light)"/>
    <rect width="900" height="700" filter="url(#grain)"/>
  </svg>`
  return sharp(Buffer.from(drawn)).jpeg({ quality: 90 }).toBuffer()
}

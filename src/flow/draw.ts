import { drawSvg } from './draw-svg.ts'
import { drawText } from './draw-text.ts'
import type { Flow } from './grammar.ts'
import type { Wording } from './outline.ts'

/**
 * A flow as a picture and as plain text: every part, question, option and edge with its guard. `say`
 * gives the sentence of a key such as `size.ask`; without it questions stand by their ids.
 */
export const drawFlow = (flow: Flow, say?: Wording): { svg: string; text: string } => ({
  svg: drawSvg(flow, say),
  text: drawText(flow, say),
})

import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Failure } from '../base/failures.ts'
import { drawFlow } from '../flow/draw.ts'
import { readFlow } from '../flow/read.ts'
import { foldersOf } from '../folders.ts'
import { readFlowsFolder } from '../intake/flows-folder.ts'
import { wordsOf } from '../intake/knowledge.ts'
import { language } from '../words/words.ts'
import { print } from './print.ts'

/** `draw-flows <folder>`: one SVG and one text drawing of each flow. */
export async function drawFlowsVerb([folder]: readonly string[]): Promise<number> {
  if (!folder) throw new Failure('bad_input', { field: 'draw-flows', why: 'name a folder' })
  const flows = readFlowsFolder(foldersOf(process.env).flowsDir)
  const flow = readFlow(flows.flow.value, flows.flow)
  const english = language('en', wordsOf(flows).get('en') ?? new Map())
  const drawn = drawFlow(flow, (key) => english.say(`intake.${key}`))
  mkdirSync(folder, { recursive: true })
  const files = { svg: join(folder, `${flow.flow}.svg`), text: join(folder, `${flow.flow}.txt`) }
  writeFileSync(files.svg, drawn.svg)
  writeFileSync(files.text, drawn.text)
  print({ ok: true, flow: flow.flow, ...files })
  return 0
}

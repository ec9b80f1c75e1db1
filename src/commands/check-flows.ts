import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Failure } from '../base/failures.ts'
import { readConfig } from '../config.ts'
import { drawFlow } from '../flow/draw.ts'
import { readFlow } from '../flow/read.ts'
import { type Examined, examine } from '../intake/examine.ts'
import { readFlowsFolder } from '../intake/flows-folder.ts'
import { wordsOf } from '../intake/knowledge.ts'
import { drawings } from '../papers/drawings/index.ts'
import { language } from '../words/words.ts'
import { print } from './output.ts'

/** What can be found in a folder, even one whose files cannot be read. */
function examined(folder: string): Pick<Examined, 'findings'> & Partial<Examined> {
  const today = new Date().toISOString().slice(0, 10)
  try {
    return examine(readFlowsFolder(folder), Object.keys(drawings), { proving: true, today })
  } catch (error) {
    if (!(error instanceof Failure) || error.code !== 'flows_invalid') throw error
    const { file, line, why } = error.details
    return {
      findings: [
        { file: String(file), line: Number(line), rule: 'unreadable', message: String(why) },
      ],
    }
  }
}

/** `check-flows [--json]`: counts, or findings with exit 2. */
export async function checkFlowsVerb(): Promise<number> {
  const { findings, counts } = examined(readConfig(process.env).flowsDir)
  if (findings.length === 0) {
    print({ ok: true, ...counts })
    return 0
  }
  print({ ok: false, findings })
  return 2
}

/** `draw-flows <folder>`: one SVG and one text drawing of each flow. */
export async function drawFlowsVerb([folder]: readonly string[]): Promise<number> {
  if (!folder) throw new Failure('bad_input', { field: 'draw-flows', why: 'name a folder' })
  const flows = readFlowsFolder(readConfig(process.env).flowsDir)
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

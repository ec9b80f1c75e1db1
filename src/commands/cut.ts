import { panelInput } from '../quilt/cut/input.ts'
import { patterns } from '../quilt/cut/patterns.ts'
import { eachFile, readJson } from './output.ts'

/** `cut <file.json…>`: every undominated way to cut a panel, with a list of cuts for each. */
export const cutVerb = (files: readonly string[]): Promise<number> =>
  eachFile(files, (file) => {
    const lists = patterns(panelInput(readJson(file)))
    return { patterns: lists.map(({ counts }) => counts), lists }
  })

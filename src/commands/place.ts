import { place } from '../quilt/place/index.ts'
import { readInstance } from '../quilt/place/instance.ts'
import { eachFile, readJson } from './output.ts'

/** `place <file.json…>`: which piece lies in which cell of a grid. */
export async function placeVerb(files: readonly string[]): Promise<number> {
  return eachFile(files, (file) => place(readInstance(readJson(file))))
}

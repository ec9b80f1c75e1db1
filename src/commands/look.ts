import { Failure } from '../base/failures.ts'
import { lookAt } from '../photo/look/look.ts'
import { eachFile, readBytes } from './output.ts'

/** `look <image…>`: what photos of garments show, one document each. */
export async function lookVerb(given: readonly string[]): Promise<number> {
  if (given.length === 0 || given[0]!.startsWith('--')) {
    throw new Failure('bad_input', { field: 'look', why: 'name photos of garments' })
  }
  return await eachFile(given, (file) => lookAt(readBytes(file)))
}

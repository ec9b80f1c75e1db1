/** A process that makes one plain photo safe in its lane and ends by itself, first closing it if told so. */
import { openLane } from '../../src/photo/lane.ts'
import { plain } from './pictures.ts'

const lane = openLane()
const { width, height } = await lane.makeSafe(await plain().jpeg().toBuffer())
process.stdout.write(`${width}x${height}\n`)
if (process.argv[2] === 'close') {
  await lane.close()
  process.stdout.write('closed\n')
}

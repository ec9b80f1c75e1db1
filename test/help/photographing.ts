/** A process that makes one plain photo safe in its lane and ends by itself, or is ended meanwhile. */
import { openLane } from '../../src/photo/lane.ts'
import { plain } from './pictures.ts'

const lane = openLane()
const { width, height } = await lane.makeSafe(await plain().jpeg().toBuffer())
process.stdout.write(`${width}x${height}\n`)

/** The thread that lays quilts. */
import { type LaidQuilt, type LayJob, layQuilt } from '../quilt/place/lay-quilt.ts'
import { answerJobs } from './answering.ts'

answerJobs<LayJob, LaidQuilt>((job, tell) => tell(layQuilt(job)))

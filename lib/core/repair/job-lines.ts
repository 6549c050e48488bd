import type { Job } from './job'
import { curingLines } from './job-curing'
import { cuttingLines } from './job-cutting'
import { finishingLines } from './job-finishing'
import { layingLines } from './job-laying'
import type { JobLine } from './types'

/** The lines of work in the order in which they are done, from the first check to the proof pull. */
export function jobLinesOf(job: Job): JobLine[] {
  return [...cuttingLines(job), ...layingLines(job), ...curingLines(job), ...finishingLines(job)]
}

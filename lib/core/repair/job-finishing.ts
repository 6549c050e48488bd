import { figure } from '../units'
import { leakLimits } from '../vacuum'
import { cautions } from './cautions'
import { type Job, jobLine, setAnew } from './job'
import type { JobLine } from './types'

/** From the cured patch to the pull that proves it. Counts and times are the trade's usual ones, from memory. */
export function finishingLines(job: Job): JobLine[] {
  const { breaksFace } = job.recess
  const limit = leakLimits.mould
  const leak = `at most ${figure(limit.riseMbar)} mbar in ${limit.minutes} min, or what the shop asks; same bag and volume as the as-found check`
  const lines = [
    jobLine(
      'dress',
      'Dress',
      breaksFace
        ? 'Flat to the face with a block: 180 grit, then finer to match, 600 to 1200. Do not cut into the laminate at the edge of the patch.'
        : 'Break edges and resin runs on the back. The tool face is untouched.',
      { cautions: [cautions.dust, cautions.edges] },
    ),
    jobLine('leak-cold', 'Mould leak check, cold', `Pump off: ${leak}.`, { cautions: [cautions.vacuum] }),
    jobLine('leak-hot', 'Mould leak check, hot', `At service temperature: ${leak}, compared hot with hot.`, {
      cautions: [cautions.vacuum, cautions.vessel, cautions.hot],
    }),
    jobLine('measure', 'Measure, by somebody else', measureDetail(job), { secondPerson: true }),
  ]
  return breaksFace ? [...lines, ...releaseLines()] : [...lines, proofLine()]
}

function measureDetail(job: Job): string {
  const set = setAnew(job).length === 0 ? '' : ` ${setAnew(job).join(', ')} from the datums;`
  const profile = job.recess.breaksFace
    ? ' profile over the patch within 0.1 mm and step at its edge under 0.05 mm, or what the shop asks;'
    : ' flatness against as-found;'
  return `Not by whoever laid it:${set}${profile} key dowels against as-found. Note instrument and temperature.`
}

function releaseLines(): JobLine[] {
  return [
    jobLine(
      'seal',
      'Seal',
      'The patch is bare: clean until water does not break, sealer 2 coats on the patch and feathered out, 15 to 30 min between.',
      { cautions: [cautions.solvent] },
    ),
    jobLine(
      'coats',
      'Release coats',
      '4 to 6 thin coats on the patch, 10 to 15 min between, then one over the whole face; dry as the product card says.',
      { cautions: [cautions.solvent] },
    ),
    jobLine(
      'tape-test',
      'Tape test',
      'Masking tape on patch and on old face: it must come off both easily. Where it grips, coat again and test again.',
    ),
    proofLine(),
  ]
}

function proofLine(): JobLine {
  return jobLine(
    'proof-pull',
    'Proof pull',
    'A careful first pull, with a part that can be spared. Note how it went; coat again before the next.',
    { cautions: [cautions.edges, cautions.hot] },
  )
}

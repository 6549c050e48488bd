import { figure } from '../units'
import { cautions } from './cautions'
import { depthMm, type Job, jobLine, workedFace } from './job'
import type { JobLine } from './types'
import { sum } from './working-line'

const more = { cautions: [cautions.dust] }

/** The scarf or the lands, and the ground that cover plies are laid on. */
export function taperLines(job: Job): JobLine[] {
  const cut = job.input.edge === 'scarf' ? [scarfLine(job)] : landLines(job)
  return [...cut, ...coverGround(job)]
}

function scarfLine(job: Job): JobLine {
  const { growthsMm, lengths } = job.taper
  const lengthMm = figure(lengths.lengthMm, 1)
  const depths = growthsMm
    .slice(0, -1)
    .map((growth, index) => `${figure(growth, 1)} out ${figure(depthAboveMm(job, index + 1), 2)} deep`)
  const borders = depths.length === 0 ? '' : ` Ply borders, mm: ${depths.join(', ')}.`
  return jobLine(
    'scarf',
    `Sand the scarf, ${lengthMm} mm`,
    `From the ${workedFace(job)}: from nothing at ${lengthMm} mm beyond the opening to ${figure(depthMm(job), 2)} mm deep at ` +
      `its edge, straight from border to border.${borders} 80 grit on a block for the outline, 150 to 180 inside. ` +
      'Check the depth at each border. Delaminated: enlarge and plan again.',
    more,
  )
}

/** From the largest and shallowest inwards. */
function landLines(job: Job): JobLine[] {
  const lands = job.recess.plies
    .map((ply, index) => ({ ply, index }))
    .slice(1)
    .reverse()
  return lands.map(({ ply, index }) =>
    jobLine(
      `step-${index + 1}`,
      `Machine the land under ply ${ply.number}`,
      `Outline ${figure(job.taper.growthsMm[index]!, 1)} mm beyond the opening, ${figure(depthAboveMm(job, index), 2)} mm deep from the ${workedFace(job)}. ` +
        'Measure the depth before the next: a land is easily a ply off.',
      more,
    ),
  )
}

function coverGround(job: Job): JobLine[] {
  const covers = job.plies.filter((ply) => ply.replaces === null)
  const last = covers.at(-1)
  if (last === undefined) return []
  const from = workedFace(job) === 'back' ? 'beyond the taper' : 'round the opening'
  return [
    jobLine(
      'cover-ground',
      `Abrade the back under the cover ${covers.length === 1 ? 'ply' : 'plies'}`,
      `On the back, ${from}, to ${figure(last.growthMm, 1)} mm beyond the opening: 80 to 180 grit until it is dull all over, without cutting fibre.`,
      more,
    ),
  ]
}

/** Real thickness of the plies laid from that one on, counted from 0: what lies over the one before it. */
function depthAboveMm(job: Job, index: number): number {
  return sum(job.recess.plies.slice(index).map((ply) => ply.thicknessMm)) * job.recess.scale
}

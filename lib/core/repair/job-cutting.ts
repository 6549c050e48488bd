import { figure } from '../units'
import { cautions } from './cautions'
import { type Job, jobLine, patternWord, workedFace } from './job'
import { plyRange } from './recess'
import type { JobLine } from './types'
import { sum } from './working-line'

/** How far beyond the outermost outline release is stripped from the face, mm; from memory. */
const stripBeyondMm = 25

/** From the first check to a clean, dry recess with everything round it released. */
export function cuttingLines(job: Job): JobLine[] {
  return [
    ...referenceLines(job),
    jobLine(
      'as-found',
      'As-found check',
      'Before any cut: leak check, key dowels measured, thickness at three places round the opening, tapped and ' +
        `looked over from both faces, photos with a scale. Place: ${job.place}.`,
    ),
    jobLine(
      'strip',
      'Strip release',
      `Strip release off ${stripNeed(job)} before any sanding: sanding drives it into the laminate.`,
      { cautions: [cautions.solvent] },
    ),
    jobLine('mark', 'Mark out, checked by a second person', markDetail(job), { secondPerson: true }),
    jobLine(
      'cut',
      'Cut the opening',
      job.recess.breaksFace && job.recess.breaksBack
        ? `Cut right through, with nothing of the ${patternWord(job)} under the blade. Keep the piece: count its plies.`
        : `Cut ${plyRange(job.recess)} only, ${figure(depthMm(job), 2)} mm deep from the ${workedFace(job)}.`,
      { cautions: [cautions.dust, cautions.edges] },
    ),
    jobLine(
      're-inspect',
      'Look again',
      'Count the plies in the cut and compare their directions with the plan. Tap round the edge: where it is ' +
        'delaminated, stop, enlarge the opening and plan again.',
    ),
    jobLine(
      'dry',
      'Dry',
      'Warm until no moisture comes out: 80 to 120 degC for 4 to 24 h, about 1 h a millimetre at 100 degC, ' +
        `under 5.6 degC/min up and down, within the mould's limits.`,
      { cautions: [cautions.vessel, cautions.hot] },
    ),
    ...taperLines(job),
    jobLine(
      'clean',
      'Clean',
      'Vacuum, then wipe with solvent and a dry lint-free cloth, 50 to 100 mm beyond the taper, until a wet film ' +
        'does not break. No release near the scarf from here on: other gloves, other cloths.',
      { cautions: [cautions.solvent] },
    ),
    ...releaseLines(job),
  ]
}

function referenceLines(job: Job): JobLine[] {
  const { side, patternAvailable } = job.input
  const lines: JobLine[] = []
  if (!patternAvailable && (job.recess.breaksFace || side === 'pattern-back')) {
    lines.push(
      jobLine(
        'splash',
        'Take a splash first',
        'There is no pattern: take a splash off the tool face, 100 mm or more beyond the opening and over two ' +
          'locating points, before anything is cut.',
        { cautions: [cautions.skin] },
      ),
    )
  }
  if (side === 'pattern-back') {
    lines.push(
      jobLine(
        'seat-gap',
        'Seat and gap',
        `Seat the mould on the ${patternWord(job)}, pinned and clamped. Feel the gap round the opening with ` +
          'gauges and note the largest. A gap becomes a step in the face.',
        { cautions: [cautions.lifting] },
      ),
    )
  }
  return lines
}

function stripNeed(job: Job): string {
  if (!job.recess.breaksFace) return 'anything that stands on the back over the footprint'
  return `the tool face to ${stripBeyondMm} mm beyond ${workedFace(job) === 'back' ? 'the opening' : 'the largest ply'}`
}

function markDetail(job: Job): string {
  const outlines = job.plies.map((ply) => `${figure(ply.growthMm, 1)}`).join(', ')
  const datum =
    job.datumsInOpening.length === 0
      ? ''
      : ` Datum ${job.datumsInOpening.join(', ')} goes: measure the frame from others first.`
  return (
    `On the ${workedFace(job)}: the opening, each outline (${outlines} mm beyond it), the u arrow and ply ` +
    `directions outside the mask.${datum} A second person checks place, size and side.`
  )
}

function depthMm(job: Job): number {
  return sum(job.recess.plies.map((ply) => ply.thicknessMm)) * job.recess.scale
}

function taperLines(job: Job): JobLine[] {
  const more = { cautions: [cautions.dust] }
  const face = workedFace(job)
  const { growthsMm, lengths } = job.taper
  if (job.input.edge === 'scarf') {
    const lines = growthsMm.map((growth) => figure(growth, 1)).join(', ')
    return [
      jobLine(
        'scarf',
        `Sand the scarf, ${figure(lengths.lengthMm, 1)} mm`,
        `From the ${face}: from nothing at ${figure(lengths.lengthMm, 1)} mm beyond the opening to ` +
          `${figure(depthMm(job), 2)} mm deep at its edge, straight between the ply borders, which show at ${lines} mm. ` +
          '80 grit on a block for the outline, 150 to 180 inside. Check the depth at each border. Delaminated: ' +
          'enlarge and plan again.',
        more,
      ),
    ]
  }
  const lands = job.recess.plies
    .map((ply, index) => ({ ply, index }))
    .slice(1)
    .reverse()
  return lands.map(({ ply, index }) => {
    const above = job.recess.plies.slice(index)
    const deep = sum(above.map((each) => each.thicknessMm)) * job.recess.scale
    return jobLine(
      `step-${index + 1}`,
      `Machine the land under ply ${ply.number}`,
      `Outline ${figure(growthsMm[index]!, 1)} mm beyond the opening, ${figure(deep, 2)} mm deep from the ${face}. ` +
        'Measure the depth before the next: steps land off by a ply easily.',
      more,
    )
  })
}

function releaseLines(job: Job): JobLine[] {
  const pins =
    job.dowelsInOpening.length === 0 ? '' : ` Pin for ${job.dowelsInOpening.join(', ')} in and released.`
  if (job.input.side === 'pattern-back') {
    const word = patternWord(job)
    return [
      jobLine(
        'release',
        `Release the ${word} and the surround`,
        `Seal and release the ${word} under the patch and 50 mm round it; let it dry away from the mould. ` +
          'Mask the mould round the taper.',
        { cautions: [cautions.solvent] },
      ),
      jobLine('seat', `Seat on the ${word}`, `Pinned and clamped, with the gap that was noted.${pins}`, {
        cautions: [cautions.lifting],
      }),
    ]
  }
  if (job.input.side === 'place-back') {
    if (!job.recess.breaksFace) return [maskLine()]
    return [
      jobLine(
        'release',
        'Release the caul',
        'Seal and release the caul away from the mould; mask the mould round the taper.',
        { cautions: [cautions.solvent] },
      ),
      jobLine(
        'caul',
        'Fit the caul',
        `Clamp it on the tool face over the opening, without a gap at its edge.${pins}`,
      ),
    ]
  }
  const backing = jobLine(
    'backing',
    'Fit a backing plate',
    'All plies are out, so the recess has no bottom: a released plate on the back, clamped without a gap.',
  )
  return job.recess.breaksBack ? [maskLine(), backing] : [maskLine()]
}

function maskLine(): JobLine {
  return jobLine('mask', 'Mask the surround', 'Film and tape round the taper. No release is brought near it.')
}

import { figure } from '../units'
import { cautions } from './cautions'
import { depthMm, faceCut, type Job, jobLine, patternWord, setAnew, workedFace } from './job'
import { taperLines } from './job-taper'
import { plyRange } from './recess'
import type { HeatLimits, JobLine } from './types'

/** How far beyond the outermost outline release is stripped from the face, mm; from memory. */
const stripBeyondMm = 25

/** Usual drying temperatures, degC; from memory. */
const dryC = { least: 80, most: 120 }

/** From the first check to a clean, dry recess with everything round it released. */
export function cuttingLines(job: Job): JobLine[] {
  return [
    ...referenceLines(job),
    jobLine(
      'as-found',
      'As-found check',
      'Before any cut: leak check cold and hot (note bagging, volume, pins, start pressure and temperature), key ' +
        'dowels measured, thickness at three places round the opening, tapped and looked over from both faces, ' +
        `photos with a scale. Place: ${job.place}.`,
      { cautions: [cautions.vacuum, cautions.vessel, cautions.hot] },
    ),
    jobLine('strip', 'Strip release', stripDetail(job), { cautions: [cautions.solvent] }),
    jobLine('mark', 'Mark out, checked by a second person', markDetail(job), { secondPerson: true }),
    ...takeOutLines(job),
    jobLine(
      'cut',
      'Cut the opening',
      job.recess.breaksFace && job.recess.breaksBack
        ? `Cut right through${job.input.side === 'pattern-back' ? `, with nothing of the ${patternWord(job)} under the blade` : ''}. Keep the piece: count its plies.`
        : `Cut ${plyRange(job.recess)} only, ${figure(depthMm(job), 2)} mm deep from the ${workedFace(job)}.`,
      { cautions: [cautions.dust, cautions.edges] },
    ),
    jobLine(
      're-inspect',
      'Look again',
      'Count the plies in the cut and compare their directions with the plan. Tap round the edge: where it is ' +
        'delaminated, stop, enlarge the opening and plan again.',
    ),
    jobLine('dry', 'Dry', dryDetail(job.input.heat, job.input.rules.heatMarginC), {
      cautions: [cautions.vessel, cautions.vacuum, cautions.hot],
    }),
    ...taperLines(job),
    jobLine(
      'clean',
      'Clean',
      `Vacuum, then wipe with solvent and a dry lint-free cloth, 50 to 100 mm beyond ${job.input.coverPlies.length === 0 ? 'the taper' : 'the largest ply'}, until ` +
        'a film of water does not break; dry it, cover it, and lay within hours. No release near the scarf from ' +
        'here on: other gloves, other cloths.',
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
        `There is no pattern: take a splash off the released tool face, 100 mm or more beyond ${faceCut(job)} and ` +
          'over two locating points, before anything is cut.',
        { cautions: [cautions.skin] },
      ),
    )
  }
  if (side === 'pattern-back') {
    const word = patternWord(job)
    const why = job.recess.breaksFace
      ? 'A gap becomes a step in the face.'
      : `The ${word} only holds the shape: the face stays whole.`
    lines.push(
      jobLine(
        'seat-gap',
        'Seat and gap',
        `Seat the mould on the ${word}, pinned and clamped. Measure the gap round the opening, with feeler gauges ` +
          `from the rim or with dabs of putty, and note the largest. ${why} Lift it off again for the cut.`,
        { cautions: [cautions.lifting] },
      ),
    )
  }
  return lines
}

function stripDetail(job: Job): string {
  const why = 'before any sanding: sanding drives it into the laminate.'
  if (!job.recess.breaksFace) {
    return `Wipe the back free of release, wax and oil over the footprint and ${stripBeyondMm} mm beyond, ${why}`
  }
  return `Strip release off the tool face to ${stripBeyondMm} mm beyond ${faceCut(job)}, ${why}`
}

function markDetail(job: Job): string {
  const face = workedFace(job)
  const covers = job.plies.filter((ply) => ply.replaces === null)
  const other = face === 'tool face' && covers.length > 0
  const marked = (other ? job.plies.filter((ply) => ply.replaces !== null) : job.plies)
    .filter((ply) => ply.growthMm > 0)
    .map((ply) => figure(ply.growthMm, 1))
  const outlines = marked.length === 0 ? '' : `, each outline (${marked.join(', ')} mm beyond it)`
  const back = other
    ? ` On the back: the cover ${covers.length === 1 ? 'ply' : 'plies'} (${covers.map((ply) => figure(ply.growthMm, 1)).join(', ')} mm beyond the opening).`
    : ''
  const datum =
    job.datumsSetAnew.length === 0
      ? ''
      : ` Datum ${job.datumsSetAnew.join(', ')} goes: measure the frame from others first.`
  return (
    `On the ${face}: the opening${outlines}, the u arrow and ply directions outside the mask.${back}${datum} ` +
    'A second person checks place, size and side.'
  )
}

/** Bushes outside the opening that the plies run over come out before anything is cut round them. */
function takeOutLines(job: Job): JobLine[] {
  if (job.dowelsUnderPlies.length === 0) return []
  const one = job.dowelsUnderPlies.length === 1
  return [
    jobLine(
      'take-out',
      `Take out ${job.dowelsUnderPlies.join(', ')}`,
      `Plies run over ${one ? 'its place' : 'their places'}: measure ${one ? 'it' : 'them'} from the datums, then take ${one ? 'it' : 'them'} out, without heat or blows on the laminate.`,
      { cautions: [cautions.dust] },
    ),
  ]
}

/** Drying in the usual range, or as hot as the mould stands where that is less. */
function dryDetail(heat: HeatLimits, marginC: number): string {
  const known = Object.values(heat).filter((limit) => limit !== null)
  const mostC = Math.min(dryC.most, ...known.map((limit) => limit - marginC))
  const ramp = `Ramps under 5.6 °C/min up and down${known.length < 3 ? ", within the mould's limits" : ''}.`
  if (mostC < dryC.least) {
    return (
      `Under vacuum at ${figure(mostC, 1)} °C or less, which is what the mould's limits leave, until no moisture ` +
      `comes out: longer than the 4 to 24 h that ${dryC.least} to ${dryC.most} °C take. ${ramp}`
    )
  }
  const range = mostC > dryC.least ? `${dryC.least} to ${figure(mostC, 1)} °C` : `${dryC.least} °C`
  return `Under vacuum at ${range} until no moisture comes out: 4 to 24 h, about 1 h a millimetre at 100 °C. ${ramp}`
}

function releaseLines(job: Job): JobLine[] {
  if (job.input.side === 'pattern-back') {
    const word = patternWord(job)
    const tags = setAnew(job)
    const pins = tags.length === 0 || !job.input.patternAvailable ? '' : ` ${pinWords(tags)} in and released.`
    const prepare = job.recess.breaksFace
      ? jobLine(
          'release',
          `Release the ${word} and the surround`,
          `Seal and release the ${word} under the patch and 50 mm round it; let it dry away from the mould. ` +
            'Mask the mould round the taper.',
          { cautions: [cautions.solvent] },
        )
      : maskLine()
    return [
      prepare,
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
        `Clamp ${job.input.patternAvailable ? 'it' : 'the splash, as the caul,'} on the tool face over the opening, without a gap at its edge.`,
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

function pinWords(tags: readonly string[]): string {
  return tags.length === 1 ? `Pin for ${tags[0]}` : `Pins for ${tags.join(', ')}`
}

function maskLine(): JobLine {
  return jobLine('mask', 'Mask the surround', 'Film and tape round the taper. No release is brought near it.')
}

import { figure } from '../units'
import { leakLimits } from '../vacuum'
import { cautions } from './cautions'
import { type Job, jobLine, workedFace } from './job'
import { plyText } from './recess'
import type { JobLine, PlannedPly } from './types'

/** Material, plies with their debulks, coupon, bag. */
export function layingLines(job: Job): JobLine[] {
  return [
    jobLine(
      'kit',
      'Cut and lay out the plies',
      `Lots in life and thawed shut. ${job.plies.length} plies by template, each with its number, u arrow and ` +
        'direction; lay them out in order. Same batch for the witness coupon.',
      { cautions: [cautions.skin] },
    ),
    ...job.plies.flatMap((ply) => [...turnLine(job, ply), layLine(job, ply), ...debulkLine(job, ply)]),
    jobLine(
      'coupon',
      'Witness coupon',
      'Lay a coupon of the same batch and cure it in the same bag: it tells Tg and cure afterwards.',
      { cautions: [cautions.skin] },
    ),
    jobLine(
      'ply-check',
      'Plies checked by a second person',
      `${job.plies.length} plies laid, ${job.plies.length} films off, directions as planned.`,
      { secondPerson: true },
    ),
    jobLine(
      'bag',
      'Bag',
      'Release film, breather 25 mm beyond the lay-up, thermocouple in the thickest place, pleats at corners and ' +
        'pins. The bag must not bridge.',
      { cautions: [cautions.vacuum] },
    ),
    jobLine(
      'bag-leak',
      'Bag leak check',
      `Pump off: at most ${figure(leakLimits.bag.riseMbar, 0)} mbar rise in ${leakLimits.bag.minutes} min, or what the shop asks.`,
      { cautions: [cautions.vacuum] },
    ),
  ]
}

/** Worked from the face, cover plies still go on the back. */
function turnLine(job: Job, ply: PlannedPly): JobLine[] {
  const firstCover = ply.replaces === null && job.plies[ply.layingOrder - 2]?.replaces !== null
  if (!firstCover || job.input.side !== 'place-face') return []
  return [
    jobLine(
      'turn',
      'Turn to the back',
      'The cover plies go on the back: turn the mould, prepare the back as the taper was.',
      {
        cautions: [cautions.lifting, cautions.dust],
      },
    ),
  ]
}

function layLine(job: Job, ply: PlannedPly): JobLine {
  const what = ply.replaces === null ? 'Cover ply' : `For ply ${ply.replaces}`
  const fromBack = workedFace(job) === 'back' || ply.replaces === null
  return jobLine(
    `lay-${ply.layingOrder}`,
    `Lay ${ply.layingOrder} of ${job.plies.length}: ${plyText(ply)}`,
    `${what}, ${figure(ply.growthMm, 1)} mm beyond the opening. ${directionText(job, ply, fromBack)} Film off.`,
    { cautions: [cautions.skin] },
  )
}

/** A direction counts from u towards v as seen from the cavity; from the back the same ply is seen mirrored. */
function directionText(job: Job, ply: PlannedPly, fromBack: boolean): string {
  const seen = fromBack ? -ply.directionDeg : ply.directionDeg
  const way =
    seen === 0
      ? 'along the u arrow'
      : `${figure(Math.abs(seen))} deg ${seen > 0 ? 'anticlockwise' : 'clockwise'} from the u arrow`
  return `Direction ${figure(ply.directionDeg)} deg, +/-${figure(job.input.rules.plyAlignmentDeg)}: as you see it from the ${fromBack ? 'back' : 'cavity'}, ${way}.`
}

/** After the first ply, then every so many, and after the last. */
function debulkLine(job: Job, ply: PlannedPly): JobLine[] {
  const laid = ply.layingOrder
  const every = job.input.rules.pliesPerDebulk
  if (laid !== job.plies.length && (laid - 1) % every !== 0) return []
  return [
    jobLine(
      `debulk-${laid}`,
      `Debulk after lay ${laid}`,
      'Perforated film, breather, 20 min at full vacuum. Look for bridging in corners.',
      { cautions: [cautions.vacuum] },
    ),
  ]
}

import { figure } from '../units'
import { leakLimits } from '../vacuum'
import { cautions } from './cautions'
import { type Job, jobLine, workedFace } from './job'
import { plyText } from './recess'
import type { JobLine, PlannedPly } from './types'

/** Material, plies with their debulks, coupon, bag. Times and allowances are the trade's usual ones, from memory. */
export function layingLines(job: Job): JobLine[] {
  return [
    jobLine(
      'kit',
      'Cut and lay out the plies',
      `Lots in life, thawed in their closed bags. ${job.plies.length} plies by template, each with its number, u arrow and ` +
        `direction; lay them out in order.${spliceText(job)} Same batch for the witness coupon.`,
      { cautions: [cautions.skin] },
    ),
    ...job.plies.flatMap((ply) => [...turnLine(job, ply), layLine(job, ply), ...debulkLine(job, ply)]),
    jobLine(
      'coupon',
      'Witness coupon',
      `Lay a coupon of the same batch, in the same bag${job.input.postCure === null ? '' : ', and take it through the post-cure'}: it tells cure and Tg afterwards.`,
      { cautions: [cautions.skin] },
    ),
    jobLine(
      'ply-check',
      'Plies checked by a second person',
      `${job.plies.length} plies laid, every film off and counted, directions as planned.`,
      { secondPerson: true },
    ),
    jobLine(
      'bag',
      'Bag',
      'Release film, breather 25 mm beyond the lay-up, thermocouple in the thickest place, pleats at corners and ' +
        `pins. The bag must not bridge.${bothSides(job) ? ' Face and back in one envelope.' : ''}`,
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

function spliceText(job: Job): string {
  if (job.spliced.length === 0) return ''
  const pieces = job.spliced.map((ply) => `no. ${ply.layingOrder} in ${ply.pieces}`).join(', ')
  return ` Pieces off the narrow roll, butted: ${pieces}; splices 25 mm or more apart from ply to ply.`
}

function bothSides(job: Job): boolean {
  return job.input.side === 'place-face' && job.input.coverPlies.length > 0
}

/** Worked from the face, cover plies still go on the back. */
function turnLine(job: Job, ply: PlannedPly): JobLine[] {
  const firstCover = ply.replaces === null && job.plies[ply.layingOrder - 2]?.replaces !== null
  if (!firstCover || !bothSides(job)) return []
  return [
    jobLine(
      'turn',
      'Turn to the back',
      'The cover plies go on the back: hold what is laid on the face under its bag, and turn the mould.',
      {
        cautions: [cautions.lifting],
      },
    ),
  ]
}

function layLine(job: Job, ply: PlannedPly): JobLine {
  const what = ply.replaces === null ? 'Cover ply' : `For ply ${ply.replaces}`
  const reach =
    ply.growthMm === 0 ? 'butted into the opening' : `${figure(ply.growthMm, 1)} mm beyond the opening`
  const fromBack = workedFace(job) === 'back' || ply.replaces === null
  return jobLine(
    `lay-${ply.layingOrder}`,
    `Lay ${ply.layingOrder} of ${job.plies.length}: ${plyText(ply)}`,
    `${what}, ${reach}. ${directionText(job, ply, fromBack)} Film off.`,
    { cautions: [cautions.skin] },
  )
}

/** A direction counts from u towards v as seen from the cavity; from the back the same ply is seen mirrored. */
function directionText(job: Job, ply: PlannedPly, fromBack: boolean): string {
  const seen = fromBack ? -ply.directionDeg : ply.directionDeg
  const way =
    seen === 0
      ? 'along the u arrow'
      : `${figure(Math.abs(seen))}° ${seen > 0 ? 'anticlockwise' : 'clockwise'} from the u arrow`
  return `Direction ${figure(ply.directionDeg)}° ± ${figure(job.input.rules.plyAlignmentDeg)}°: as you see it from the ${fromBack ? 'back' : 'cavity'}, ${way}.`
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

import type { CureCycle } from '../laminate/types'
import { figure } from '../units'
import { cautions } from './cautions'
import { cycleText, type Job, jobLine, patternWord } from './job'
import type { JobLine } from './types'

/** Cure, post-cure, and the bushes that are set before the mould leaves the pattern for good. */
export function curingLines(job: Job): JobLine[] {
  const { cure, postCure, side } = job.input
  const lines = [
    jobLine(
      'cure',
      cure === null ? 'Cure: not given yet' : `Cure: ${cure.name}`,
      `${cycleDetail(job, cure)} Log temperature and vacuum to the end.`,
      { cautions: [cautions.vessel, cautions.thickStack, cautions.dataSheet] },
    ),
  ]
  if (postCure !== null) {
    lines.push(
      jobLine(
        'post-cure',
        `Post-cure: ${postCure.name}`,
        `${cycleDetail(job, postCure)} ${postCurePlace(job)} The air must never get ahead of the resin's present Tg.`,
        { cautions: [cautions.vessel, cautions.hot, cautions.dataSheet] },
      ),
    )
  }
  lines.push(...bushLines(job))
  if (side === 'pattern-back') {
    lines.push(
      jobLine(
        'lift',
        `Lift off the ${patternWord(job)}`,
        'Below 50 degC. Wedges at the flange only, never at the patch.',
        {
          cautions: [cautions.lifting, cautions.hot],
        },
      ),
    )
  }
  return lines
}

function postCurePlace(job: Job): string {
  if (job.input.side !== 'pattern-back') return 'Supported all over, without bag or pressure.'
  return `Off the ${patternWord(job)} and supported all over, unless the ${patternWord(job)} stands it.`
}

/** The new bush takes its place from the pattern's pin; without one it is measured. */
function bushLines(job: Job): JobLine[] {
  const { side, postCure } = job.input
  if (job.dowelsInOpening.length === 0) return []
  const tags = job.dowelsInOpening.join(', ')
  if (side !== 'pattern-back' || !job.input.patternAvailable) {
    return [
      jobLine(
        'bush',
        `Set ${tags} by measuring`,
        'No pattern pin holds the place: set the bush by measuring from the datums, and measure it back when it is bonded.',
        { secondPerson: true, cautions: [cautions.dust, cautions.skin] },
      ),
    ]
  }
  const again =
    postCure === null
      ? []
      : [
          jobLine(
            'reseat',
            'Seat on the pattern again',
            'If it was lifted for the post-cure: seat, pin and clamp it with the gap that was noted.',
            { cautions: [cautions.lifting] },
          ),
        ]
  return [
    ...again,
    jobLine(
      'bush',
      `Set ${tags} off the pattern pin`,
      'Bush off the pattern pin before the mould is lifted for good. Lifted already and not to be seated again: measure back from the datums.',
      { cautions: [cautions.dust, cautions.skin] },
    ),
  ]
}

function cycleDetail(job: Job, cycle: CureCycle | null): string {
  const { inUseC, freeStandingC, bondedC } = job.input.heat
  const limit = (value: number | null) => (value === null ? 'unknown' : `${figure(value, 1)} degC`)
  const limits = `Mould limits: in use ${limit(inUseC)}, free-standing ${limit(freeStandingC)}, bonded parts ${limit(bondedC)}.`
  const ramps =
    cycle === null || cycle.segments.length === 0 ? "By the material's data sheet." : `${cycleText(cycle)}.`
  return `${capital(ramps)} ${limits}`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

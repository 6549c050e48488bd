import type { CureCycle } from '../laminate/types'
import { figure } from '../units'
import { cautions } from './cautions'
import { cycleText, type Job, jobLine, patternWord, setAnew } from './job'
import type { JobLine } from './types'
import { capital } from './words'

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
  lines.push(...uncoverLines(job))
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
        `${postCure === null ? 'Below' : 'Unless it was lifted for the post-cure: below'} 50 °C. Wedges at the flange only, never at the patch.`,
        {
          cautions: [cautions.lifting, cautions.hot],
        },
      ),
    )
  }
  return lines
}

/** What closed the face or the back in the cure comes off before the patch is heated any further. */
function uncoverLines(job: Job): JobLine[] {
  const { side, postCure } = job.input
  const caul = side === 'place-back' && job.recess.breaksFace
  const backing = side === 'place-face' && job.recess.breaksBack
  if (!caul && !backing) return []
  const stays = postCure === null ? '' : ' It stays on for the post-cure only if it stands the heat.'
  return [
    jobLine(
      caul ? 'caul-off' : 'backing-off',
      caul ? 'Take the caul off' : 'Take the backing plate off',
      `Below 50 °C. Look for dry spots, print and a step at the edge.${stays}`,
      { cautions: [cautions.hot, cautions.edges] },
    ),
  ]
}

function postCurePlace(job: Job): string {
  const word = patternWord(job)
  const off =
    job.input.side === 'pattern-back' ? `Off the ${word} (unless the ${word} stands the heat), ` : ''
  return capital(`${off}supported all over, without bag or pressure.`)
}

/** The new bush takes its place from the pattern's pin; without one it is measured. */
function bushLines(job: Job): JobLine[] {
  const { side, postCure } = job.input
  if (setAnew(job).length === 0) return []
  const tags = setAnew(job).join(', ')
  if (side !== 'pattern-back' || !job.input.patternAvailable) {
    return [
      jobLine(
        'bush',
        `Set ${tags} by measuring`,
        'No pattern pin holds the place: set it by measuring from the datums, and measure it back when it is bonded.',
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
      'Off the pattern pin, before the mould is lifted for good. Lifted already and not to be seated again: measure back from the datums.',
      { cautions: [cautions.dust, cautions.skin] },
    ),
  ]
}

function cycleDetail(job: Job, cycle: CureCycle | null): string {
  const { inUseC, freeStandingC, bondedC } = job.input.heat
  const limit = (value: number | null) => (value === null ? 'unknown' : `${figure(value, 1)} °C`)
  const limits = `Mould limits: in use ${limit(inUseC)}, free-standing ${limit(freeStandingC)}, bonded parts ${limit(bondedC)}.`
  const ramps =
    cycle === null || cycle.segments.length === 0 ? "By the material's data sheet." : `${cycleText(cycle)}.`
  return `${capital(ramps)} ${limits}`
}

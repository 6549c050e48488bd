import type { CureCycle } from '../laminate/types'
import type { Finding } from '../result'
import { figure } from '../units'
import type { HeatLimits, PatchInput } from './types'

const limitNames = {
  inUseC: 'the limit in use under pressure',
  freeStandingC: 'the free-standing limit (present Tg)',
  bondedC: 'the limit of bonded bushes and backing',
} as const satisfies Record<keyof HeatLimits, string>

const limitKeys = ['inUseC', 'freeStandingC', 'bondedC'] as const

/** Cure and post-cure against each of the mould's three heat limits, and the patch's Tg against the next part. */
export function checkHeat(input: PatchInput, place: string): Finding[] {
  return [
    ...unknownLimits(input, place),
    ...(input.cure === null ? [noCure(place)] : cycleFindings(input, input.cure, 'cure', place)),
    ...(input.postCure === null ? [] : cycleFindings(input, input.postCure, 'post-cure', place)),
    ...tgFindings(input, place),
  ]
}

/** Hottest temperature of a cycle, degC; null for one without segments. */
export function hottestC(cycle: CureCycle): number | null {
  return cycle.segments.length === 0 ? null : Math.max(...cycle.segments.map((segment) => segment.toC))
}

function unknownLimits(input: PatchInput, place: string): Finding[] {
  const unknown = limitKeys.filter((key) => input.heat[key] === null)
  if (unknown.length === 0 || (input.cure === null && input.postCure === null)) return []
  return [
    {
      code: 'heat-limit-unknown',
      severity: 'look',
      text: `Not known of the mould: ${unknown.map((key) => limitNames[key]).join('; ')}.`,
      place,
      cure: 'Find it from the post-cure chart, the data sheet or a coupon before anything is heated.',
    },
  ]
}

function noCure(place: string): Finding {
  return {
    code: 'cure-not-said',
    severity: 'look',
    text: 'No cure is given for the patch, so its heat was not checked.',
    place,
    cure: "Give the cure of the patch from the material's data sheet.",
  }
}

function cycleFindings(
  input: PatchInput,
  cycle: CureCycle,
  stage: 'cure' | 'post-cure',
  place: string,
): Finding[] {
  const hottest = hottestC(cycle)
  if (hottest === null) {
    return [
      {
        code: 'cure-not-said',
        severity: 'look',
        text: `The ${stage} "${cycle.name}" has no ramps and holds, so its heat was not checked.`,
        place,
        cure: "Give its ramps and holds from the material's data sheet.",
      },
    ]
  }
  return limitKeys.flatMap((key) => {
    const limit = input.heat[key]
    if (limit === null) return []
    const found = againstLimit(input, { stage, hottest, key, limit })
    return found === null ? [] : [{ ...found, place: `${place}, ${stage}` }]
  })
}

interface Heating {
  readonly stage: 'cure' | 'post-cure'
  readonly hottest: number
  readonly key: (typeof limitKeys)[number]
  readonly limit: number
}

/**
 * A post-cure is free-standing and without pressure, so the limit for use under pressure is no stop for it: going
 * over it is told, with what follows. Where the free-standing limit is known, that is the one which judges it.
 */
function againstLimit(input: PatchInput, { stage, hottest, key, limit }: Heating): Finding | null {
  const leastMarginC = input.rules.heatMarginC
  const figures = { hottestC: hottest, limitC: limit, marginC: limit - hottest }
  const words = `The ${stage} goes to ${figure(hottest, 1)} °C; ${limitNames[key]} is ${figure(limit, 1)} °C`
  const slug = { inUseC: 'in-use', freeStandingC: 'free-standing', bondedC: 'bonded' }[key]
  const unpressed = stage === 'post-cure' && key === 'inUseC'
  if (hottest > limit) {
    return {
      code: `${stage}-over-${slug}-limit`,
      severity: !unpressed ? 'stop' : input.heat.freeStandingC === null ? 'look' : 'note',
      text: `${words}.`,
      place: null,
      cure: unpressed
        ? 'Only free-standing, without bag or pressure, supported all over.'
        : coolerCycle(input, stage),
      figures,
    }
  }
  if (unpressed || limit - hottest >= leastMarginC) return null
  return {
    code: `${stage}-near-${slug}-limit`,
    severity: 'look',
    text: `${words}: ${figure(limit - hottest, 1)} °C of margin, ${figure(leastMarginC)} asked for.`,
    place: null,
    cure: coolerCycle(input, stage),
    figures,
  }
}

/** The temperature that keeps the margin to every limit that holds for the stage, so the cure breaks no other. */
function coolerCycle({ heat, rules }: PatchInput, stage: 'cure' | 'post-cure'): string {
  const holding = limitKeys.filter((key) => stage === 'cure' || key !== 'inUseC').map((key) => heat[key])
  const known = holding.filter((limit) => limit !== null)
  const hottestC = figure(Math.min(...known) - rules.heatMarginC, 1)
  const unknown = known.length < holding.length ? ' that is known' : ''
  return `A ${stage} that stays at or below ${hottestC} °C keeps the margin to every limit${unknown}; its Tg is judged anew.`
}

/** Where the patch's Tg comes out below the parent's, the mould's limit drops to what the patch stands. */
function tgFindings(input: PatchInput, place: string): Finding[] {
  const last = input.postCure ?? input.cure
  if (last === null) return []
  const next = nextPartFindings(input, last, place)
  return next.some(({ severity }) => severity === 'look')
    ? next
    : [...next, ...limitDrops(input, last, place)]
}

/** The next part is well, but the mould was good for more than the patch is. */
function limitDrops({ heat, rules }: PatchInput, { name, tgAfterC }: CureCycle, place: string): Finding[] {
  if (tgAfterC === null || heat.inUseC === null) return []
  const limitC = tgAfterC - rules.heatMarginC
  if (limitC >= heat.inUseC) return []
  return [
    {
      code: 'patch-tg-below-limit',
      severity: 'look',
      text:
        `After "${name}" the patch has a Tg of ${figure(tgAfterC, 1)} °C; with the margin of ${figure(rules.heatMarginC)} ` +
        `the mould's limit in use drops from ${figure(heat.inUseC, 1)} to ${figure(limitC, 1)} °C.`,
      place,
      cure: `Put ${figure(limitC, 1)} °C on the mould as its limit in use when the patch is laid; or a hotter post-cure within the mould's limits.`,
      figures: { tgC: tgAfterC, inUseC: heat.inUseC, limitDropsToC: limitC },
    },
  ]
}

function nextPartFindings(input: PatchInput, last: CureCycle, place: string): Finding[] {
  const { nextPartCureC, rules } = input
  if (nextPartCureC === null) {
    return [
      {
        code: 'next-part-cure-not-said',
        severity: 'note',
        text: 'The next part cure was not said, so the Tg of the patch was not judged by it.',
        place,
        cure: 'Give the hottest cure that parts will see in this mould.',
      },
    ]
  }
  const tg = last.tgAfterC
  if (tg === null) {
    return [
      {
        code: 'patch-tg-unknown',
        severity: 'look',
        text: `The Tg of the patch after "${last.name}" is not known; parts will cure at ${figure(nextPartCureC, 1)} °C.`,
        place,
        cure: 'Take it from the data sheet, or have the witness coupon measured.',
      },
    ]
  }
  if (tg >= nextPartCureC + rules.heatMarginC) return []
  const limitC = tg - rules.heatMarginC
  return [
    {
      code: 'patch-tg-low',
      severity: 'look',
      text:
        `After "${last.name}" the patch has a Tg of ${figure(tg, 1)} °C; the next part cures at ` +
        `${figure(nextPartCureC, 1)} and the margin is ${figure(rules.heatMarginC)}. The mould's limit drops to ${figure(limitC, 1)} °C.`,
      place,
      cure:
        `Cure parts at ${figure(limitC, 1)} °C or less; or a post-cure that gives a Tg of ` +
        `${figure(nextPartCureC + rules.heatMarginC, 1)} °C and keeps within the mould's limits: plan it and it is checked.`,
      figures: { tgC: tg, nextPartCureC, limitDropsToC: limitC },
    },
  ]
}

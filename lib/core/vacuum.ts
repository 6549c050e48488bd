import type { Finding, Result, WorkingStep } from './result'
import type { SourceId } from './sources'
import { figure, fromInside, toInside } from './units'

/** Standard atmosphere; the barometer of the day is better. */
export const standardAtmosphereMbar = 1013.25

/** One leak check with the pump shut off. Pressures are absolute. Null: not noted, and so not comparable. */
export interface LeakCheck {
  /** How it was bagged, in the shop's own words: "envelope", "face, sealed to the flange". */
  readonly bagging: string
  readonly volumeL: number | null
  readonly pins: 'in' | 'out' | null
  readonly temperatureC: number | null
  readonly startMbar: number
  readonly endMbar: number
  readonly minutes: number
}

/** So much rise in so many minutes, pump shut off. */
export interface LeakLimit {
  readonly name: string
  readonly riseMbar: number
  readonly minutes: number
  readonly sourceId: SourceId
}

/** Published limits differ tenfold: one is picked and shown. The mould's own check and the bag's are two tests. */
export const leakLimits = {
  bag: {
    name: 'bag before a cure: 1 inHg in 5 min',
    riseMbar: toInside(1, 'pressure', 'inHg'),
    minutes: 5,
    sourceId: 'drop-test',
  },
  mould: { name: 'bare mould: 20 mbar in 10 min', riseMbar: 20, minutes: 10, sourceId: 'memory' },
} as const satisfies Record<string, LeakLimit>

export interface LeakVerdict {
  readonly riseMbar: number
  readonly rateMbarPerMin: number
  /** What the limit allows over the minutes of this check. */
  readonly allowedMbar: number
  /** unclear: the pressure fell, so it was not a leak that was read. */
  readonly verdict: 'within' | 'over' | 'unclear'
}

/** Loss of vacuum in mbar between two gauge readings in inHg, such as 29.20 and 29.11. */
export function lossOfVacuumMbar(startInHg: number, endInHg: number): number {
  return toInside(startInHg - endInHg, 'pressure', 'inHg')
}

/**
 * Absolute pressure in mbar from a gauge that shows vacuum in inHg. RangeError when the gauge shows more vacuum
 * than the barometer allows.
 */
export function absoluteFromVacuumMbar(vacuumInHg: number, barometerMbar = standardAtmosphereMbar): number {
  const absolute = barometerMbar - toInside(vacuumInHg, 'pressure', 'inHg')
  if (!(absolute >= 0)) {
    const mostInHg = fromInside(barometerMbar, 'pressure', 'inHg')
    throw new RangeError(
      `${vacuumInHg} inHg is more vacuum than the barometer's ${figure(mostInHg)} inHg: check gauge and barometer`,
    )
  }
  return absolute
}

/** Vacuum in mbar below the atmosphere that a percentage such as "95 % vacuum" means. Share from 0 to 1. */
export function vacuumOfShareMbar(share: number, atmosphereMbar = standardAtmosphereMbar): number {
  if (!(share >= 0 && share <= 1))
    throw new RangeError(`the share of vacuum must lie between 0 and 1, got ${share}`)
  return share * atmosphereMbar
}

/**
 * Judges a leak check by a limit scaled to its own minutes. A leak slows down as the bag fills, so a check that is
 * shorter than the limit's time looks worse than it is and says less: it is told.
 * RangeError on pressures below zero or no time.
 */
export function judgeLeak(check: LeakCheck, limit: LeakLimit): Result<LeakVerdict> {
  const { startMbar, endMbar, minutes } = check
  if (!(startMbar >= 0 && endMbar >= 0)) {
    throw new RangeError(`absolute pressures can't be below 0, got ${startMbar} and ${endMbar} mbar`)
  }
  if (!(minutes > 0)) throw new RangeError(`a leak check needs more than 0 minutes, got ${minutes}`)
  const riseMbar = endMbar - startMbar
  const rateMbarPerMin = riseMbar / minutes
  const allowedMbar = (limit.riseMbar * minutes) / limit.minutes
  const verdict = riseMbar < 0 ? 'unclear' : riseMbar <= allowedMbar ? 'within' : 'over'
  return {
    value: { riseMbar, rateMbarPerMin, allowedMbar, verdict },
    method: `rise with the pump shut off against ${limit.name}`,
    working: leakWorking(check, limit, { riseMbar, rateMbarPerMin, allowedMbar, verdict }),
    findings: leakFindings(check, limit, { riseMbar, rateMbarPerMin, allowedMbar, verdict }),
  }
}

/** Differences up to which two checks still count as alike; from memory. */
const alike = { startMbar: 20, temperatureC: 5, volumeShare: 0.1 }

/** Only checks with the same bagging, volume, pins, start pressure and temperature say anything of each other. */
export function comparable(
  a: LeakCheck,
  b: LeakCheck,
): { readonly ok: true } | { readonly ok: false; readonly reasons: readonly string[] } {
  const reasons: string[] = []
  if (a.bagging.trim().toLowerCase() !== b.bagging.trim().toLowerCase()) {
    reasons.push(`other bagging: "${a.bagging}" and "${b.bagging}"`)
  }
  if (a.pins === null || b.pins === null) reasons.push('pins in or out was not noted')
  else if (a.pins !== b.pins) reasons.push(`pins ${a.pins} and pins ${b.pins}`)
  if (a.volumeL === null || b.volumeL === null) reasons.push('the volume was not noted')
  else if (Math.abs(a.volumeL - b.volumeL) > alike.volumeShare * Math.max(a.volumeL, b.volumeL)) {
    reasons.push(`other volume: ${figure(a.volumeL)} and ${figure(b.volumeL)} l`)
  }
  if (a.temperatureC === null || b.temperatureC === null) reasons.push('the temperature was not noted')
  else if (Math.abs(a.temperatureC - b.temperatureC) > alike.temperatureC) {
    reasons.push(`other temperature: ${figure(a.temperatureC)} and ${figure(b.temperatureC)} °C`)
  }
  if (Math.abs(a.startMbar - b.startMbar) > alike.startMbar) {
    reasons.push(`other start pressure: ${figure(a.startMbar)} and ${figure(b.startMbar)} mbar`)
  }
  return reasons.length === 0 ? { ok: true } : { ok: false, reasons }
}

function leakWorking(check: LeakCheck, limit: LeakLimit, found: LeakVerdict): WorkingStep[] {
  return [
    {
      symbol: 'dp',
      label: 'rise of pressure, pump shut off',
      formula: 'p_end - p_start',
      numbers: `${figure(check.endMbar)} - ${figure(check.startMbar)}`,
      value: found.riseMbar,
      unit: 'mbar',
      sourceId: 'derived',
    },
    {
      symbol: 'q',
      label: 'rate of rise',
      formula: 'dp / minutes',
      numbers: `${figure(found.riseMbar)} / ${figure(check.minutes)}`,
      value: found.rateMbarPerMin,
      unit: 'mbar/min',
      sourceId: 'derived',
    },
    {
      symbol: 'dp_allowed',
      label: `allowed by ${limit.name}`,
      formula: 'limit x minutes / minutes of the limit',
      numbers: `${figure(limit.riseMbar)} x ${figure(check.minutes)} / ${figure(limit.minutes)}`,
      value: found.allowedMbar,
      unit: 'mbar',
      sourceId: limit.sourceId,
    },
  ]
}

function leakFindings(check: LeakCheck, limit: LeakLimit, found: LeakVerdict): Finding[] {
  const findings: Finding[] = []
  const figures = { riseMbar: found.riseMbar, allowedMbar: found.allowedMbar, minutes: check.minutes }
  if (found.verdict === 'over') {
    findings.push({
      code: 'leak-over-limit',
      severity: 'look',
      text: `${figure(found.riseMbar)} mbar in ${figure(check.minutes)} min; ${figure(found.allowedMbar)} mbar allowed (${limit.name}).`,
      place: null,
      cure: 'Check bag, tape and ports first, with the same bag on a plain plate; then look for the leak in the mould.',
      figures,
    })
  }
  if (found.verdict === 'unclear') {
    findings.push({
      code: 'leak-pressure-fell',
      severity: 'look',
      text: `The pressure fell by ${figure(-found.riseMbar)} mbar: the pump was not shut off, or the mould cooled.`,
      place: null,
      cure: 'Shut the pump off, wait until the temperature stands, and read again.',
      figures,
    })
  }
  if (check.minutes < limit.minutes) {
    findings.push({
      code: 'leak-check-short',
      severity: 'look',
      text: `Read over ${figure(check.minutes)} min; the limit is meant for ${figure(limit.minutes)} min, so it was scaled down.`,
      place: null,
      cure: `Read over ${figure(limit.minutes)} min.`,
      figures,
    })
  }
  return findings
}

import { daysBetween, type IsoDate, shortDate } from '../dates'
import type { Finding, Severity } from '../result'
import { holdingStates } from './state'
import type { LogKind, MouldCounts, MouldState, ReleaseCount, UpkeepRules } from './types'

/** One line of what must be settled before the next lay-up, with its cure. */
export interface Matter extends Finding {
  /** The word at the end of the line: "missing", "proof pull", "2 more coats". */
  readonly word: string
  /** The act that settles it; null when it is settled elsewhere. */
  readonly settledBy: LogKind | null
  readonly areaId: string | null
  readonly patchId: string | null
}

interface MatterParts {
  readonly code: string
  readonly severity: Severity
  readonly text: string
  readonly word: string
  readonly cure: string
  readonly settledBy: LogKind | null
  readonly target?: ReleaseCount
}

function matter({ target, ...parts }: MatterParts): Matter {
  return {
    ...parts,
    place: target?.name ?? null,
    areaId: target?.target === 'area' ? target.areaId : null,
    patchId: target?.target === 'patch' ? target.patchId : null,
  }
}

/**
 * What must be settled before the next lay-up, worst first: state, release of the face, of its areas and of fresh
 * patches, leak checks, and what differs from the last good pull. Limits are the shop's rules (from memory, editable).
 * `now` is an ISO moment, `today` the shop's day.
 */
export function beforeLayUp(
  counts: MouldCounts,
  rules: UpkeepRules,
  today: IsoDate,
  now: string,
): readonly Matter[] {
  const matters = [
    ...stateMatters(counts, today),
    ...counts.release.flatMap((target) => releaseMatters(target, counts, rules, now)),
    ...leakMatters(counts, rules, today),
    ...differences(counts),
  ]
  const rank = { stop: 0, look: 1, note: 2 } as const
  return [...matters].sort((a, b) => rank[a.severity] - rank[b.severity])
}

/** One line for each state that holds, so that whoever overrides one has seen them all. */
function stateMatters(counts: MouldCounts, today: IsoDate): Matter[] {
  const states = holdingStates(counts).flatMap((holding) => stateMatter(holding, counts, today))
  const patches = counts.unprovedPatches.map((patch) =>
    matter({
      code: 'patch-unproved',
      severity: 'look',
      text: `Patch ${patch.number}, ${patch.place}: not yet proved`,
      word: 'proof pull',
      cure: 'Clear for a proof pull: a low-risk part, careful demoulding; then write it down as proved',
      settledBy: 'proved',
    }),
  )
  return [...states, ...patches]
}

function stateMatter(
  { state, reason }: { readonly state: MouldState; readonly reason: string },
  counts: MouldCounts,
  today: IsoDate,
): Matter[] {
  switch (state) {
    case 'retired':
    case 'away':
    case 'being built':
    case 'held':
    case 'under repair':
      return [
        matter({
          code: 'not-fit',
          severity: 'stop',
          text: reason ? `The mould is ${state}: ${reason}` : `The mould is ${state}`,
          word: state,
          cure:
            state === 'held' ? 'Inspect it and write down what was found' : 'Change its state with a reason',
          settledBy: state === 'held' ? 'inspection' : 'state',
        }),
      ]
    case 'part in it':
      return [
        matter({
          code: 'part-in-it',
          severity: 'stop',
          text: `Cleared on ${shortDate(counts.clearedOn ?? today, today)} and no pull since`,
          word: 'part in it',
          cure: 'Log the pull',
          settledBy: 'pull',
        }),
      ]
    case 'proof pull only':
    case 'racked':
    case 'fit for use':
      return []
  }
}

function releaseMatters(
  target: ReleaseCount,
  counts: MouldCounts,
  rules: UpkeepRules,
  now: string,
): Matter[] {
  // The whole face speaks for its areas; an area speaks only where something was done to it alone.
  const face = counts.release.find((candidate) => candidate.target === 'face')
  if (target.target === 'area' && face && sameRelease(target, face)) return []
  const found: Matter[] = []
  const fresh = target.target === 'patch'
  const since = fresh ? 'since it was laid' : 'since it was stripped'
  if (target.tapeResult === 'grips' && target.tapeSinceCoat) {
    found.push(
      matter({
        code: 'tape-grips',
        severity: 'stop',
        text: `${capital(target.name)}: the tape gripped and no coat since`,
        word: 'tape grips',
        cure: 'Put a coat on and test again',
        settledBy: 'coat',
        target,
      }),
    )
  }
  const bare = fresh || target.stripOn !== null
  if (bare && rules.sealNeeded && !(target.sealedSinceStrip && target.sealOn)) {
    found.push(
      matter({
        code: 'not-sealed',
        severity: 'stop',
        text: `${capital(target.name)}: not sealed ${since}`,
        word: 'bare',
        cure: 'Seal it, then coat it as new',
        settledBy: 'seal',
        target,
      }),
    )
  }
  const lacking = rules.coatsAfterStrip - target.coatsSinceStrip
  if (bare && lacking > 0) {
    found.push(
      matter({
        code: 'too-few-coats',
        severity: 'stop',
        text: `${capital(target.name)}: ${target.coatsSinceStrip} of ${rules.coatsAfterStrip} coats ${since}`,
        word: `${lacking} more ${lacking === 1 ? 'coat' : 'coats'}`,
        cure: 'Coat it as new; a spot of a few square centimetres is enough to hold a part',
        settledBy: 'coat',
        target,
      }),
    )
  }
  if (fresh && lacking <= 0 && !(target.tapeOn && target.tapeSinceCoat)) {
    found.push(
      matter({
        code: 'no-tape-test',
        severity: 'look',
        text: `${capital(target.name)}: no tape test since it was coated`,
        word: 'tape test',
        cure: 'Press tape on the patch and beside it; it must slip',
        settledBy: 'tape-test',
        target,
      }),
    )
  }
  if (!fresh && target.coatOn === null) {
    found.push(
      matter({
        code: 'release-unknown',
        severity: 'look',
        text: `${capital(target.name)}: nobody has written down a coat`,
        word: 'not known',
        cure: 'Tape test it, or strip it and start again',
        settledBy: 'coat',
        target,
      }),
    )
  }
  if (!fresh && target.coatOn !== null && target.pullsSinceCoat >= rules.pullsPerTouchUp) {
    found.push(
      matter({
        code: 'touch-up-due',
        severity: 'look',
        text: `${capital(target.name)}: ${target.pullsSinceCoat} pulls since coated; the shop's rule is ${rules.pullsPerTouchUp}`,
        word: 'touch-up',
        cure: 'Tape test; put a touch-up coat on where it grips',
        settledBy: 'coat',
        target,
      }),
    )
  }
  if (!fresh && target.stripOn !== null && target.pullsSinceStrip < rules.firstPulls && lacking <= 0) {
    found.push(
      matter({
        code: 'first-pulls',
        severity: 'note',
        text: `${capital(target.name)}: pull ${target.pullsSinceStrip + 1} of the first ${rules.firstPulls} after a strip; most sticking happens here`,
        word: 'first pulls',
        cure: 'A low-risk part first, and a touch-up coat after each',
        settledBy: null,
        target,
      }),
    )
  }
  if (!fresh && target.stripOn !== null && target.pullsSinceStrip >= rules.pullsPerStrip) {
    found.push(
      matter({
        code: 'strip-due',
        severity: 'note',
        text: `${capital(target.name)}: ${target.pullsSinceStrip} pulls since stripped; the shop's rule is ${rules.pullsPerStrip}`,
        word: 'strip',
        cure: 'Look for haze and build-up; strip and start again',
        settledBy: 'strip',
        target,
      }),
    )
  }
  if (target.coatAt !== null) {
    // A clock in a pocket may run a little ahead: such a coat has all its time to go.
    const passedMin = Math.max(0, (Date.parse(now) - Date.parse(target.coatAt)) / 60_000)
    const minutesLeft = Math.ceil(rules.coatDryMin - passedMin)
    if (minutesLeft > 0) {
      found.push(
        matter({
          code: 'coat-drying',
          severity: 'stop',
          text: `${capital(target.name)}: the last coat is still drying; the shop's rule is ${rules.coatDryMin} min`,
          word: `${minutesLeft} min`,
          cure: 'Wait',
          settledBy: null,
          target,
        }),
      )
    }
  }
  return found
}

function sameRelease(area: ReleaseCount, face: ReleaseCount): boolean {
  return (
    area.stripOn === face.stripOn &&
    area.sealOn === face.sealOn &&
    area.coatOn === face.coatOn &&
    area.coatAt === face.coatAt &&
    area.tapeOn === face.tapeOn &&
    area.tapeResult === face.tapeResult &&
    area.coatsSinceStrip === face.coatsSinceStrip
  )
}

function leakMatters(counts: MouldCounts, rules: UpkeepRules, today: IsoDate): Matter[] {
  const last = counts.lastLeak
  const settled = { severity: 'look', settledBy: 'leak-check' } as const
  if (!last) {
    return [
      matter({
        ...settled,
        code: 'leak-unknown',
        text: 'No leak check of the mould is written down',
        word: 'missing',
        cure: 'Check the mould alone, pins out, cold; then hot',
      }),
    ]
  }
  const found: Matter[] = []
  const loss = leakLossMbar(last.startMbar, last.endMbar)
  const allowed = (rules.leakLimitMbar / rules.leakLimitMin) * last.minutes
  const told = `${oneDecimal(loss)} mbar in ${last.minutes} min on ${shortDate(last.doneOn, today)}, ${last.heat}, pins ${last.pins}`
  // Readings have at most a few decimals: what their binary difference adds is no leak.
  if (loss > allowed + 1e-9) {
    found.push(
      matter({
        code: 'leak-over-limit',
        severity: 'stop',
        text: `Leak over the limit: ${told}; the shop's rule is ${rules.leakLimitMbar} mbar in ${rules.leakLimitMin} min`,
        word: 'leaks',
        cure: 'Tell bag from mould by a test on a plate that is known to be good; find and mend; check again',
        settledBy: 'leak-check',
      }),
    )
  }
  if (!counts.leakSinceRepair) {
    found.push(
      matter({
        ...settled,
        code: 'leak-before-repair',
        text: `No leak check since the last repair; the last one: ${told}`,
        word: 'missing',
        cure: 'Check the mould alone, cold and hot',
      }),
    )
  } else if (daysBetween(last.doneOn, today) > rules.leakEveryDays) {
    found.push(
      matter({
        ...settled,
        code: 'leak-old',
        text: `Last leak check ${daysBetween(last.doneOn, today)} days ago: ${told}`,
        word: 'due',
        cure: 'Check the mould alone, same bagging and start pressure as last time',
      }),
    )
  }
  return found
}

/** mbar lost: the absolute pressure under the bag rises from start to end. */
export function leakLossMbar(startMbar: number, endMbar: number): number {
  return endMbar - startMbar
}

function differences(counts: MouldCounts): Matter[] {
  const before = counts.atLastGoodPull
  const now = counts.release.find((target) => target.target === 'face')
  if (!before || !now) return []
  const told = [
    differs('sealer', before.sealProduct, now.sealProduct),
    differs('sealer lot', before.sealLot, now.sealLot),
    differs('release agent', before.coatProduct, now.coatProduct),
    differs('release lot', before.coatLot, now.coatLot),
  ].filter((line): line is string => line !== null)
  const first = told[0]
  if (!first) return []
  return [
    matter({
      code: 'differs-from-last-good',
      severity: 'note',
      text: `Differs from the last good pull: ${told.join('; ')}`,
      word: first.split(':')[0] ?? first,
      cure: 'Make sure that it is meant; a test patch tells',
      settledBy: null,
    }),
  ]
}

function differs(what: string, before: string | null, now: string | null): string | null {
  if (before === null || now === null || before === now) return null
  return `${what}: ${before} then, ${now} now`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function oneDecimal(value: number): string {
  return value.toFixed(1).replace(/\.0$/, '')
}

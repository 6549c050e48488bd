import { type Matter, matter } from './matter'
import type { MouldCounts, ReleaseCount, UpkeepRules } from './types'

/** What the release of the face, an area or a fresh patch lacks. */
export function releaseMatters(
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
function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

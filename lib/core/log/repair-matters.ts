import { daysBetween, type IsoDate, shortDate } from '../dates'
import { type Matter, matter } from './matter'
import { untilWords } from './over-day'
import type { MouldCounts, RepairCount, UpkeepRules } from './types'

/** How near a limit is told: common practice, no source. */
const nearPulls = 1
export const nearDays = 7

/** What repaired ground still lacks, and the limits of repairs for the time being. */
export function repairMatters(counts: MouldCounts, rules: UpkeepRules, today: IsoDate): Matter[] {
  return counts.repairs.flatMap((repair) => {
    const carried = counts.openMatters.find((open) => open.entryId === repair.entryId)?.untilOn
    const name = `Repair of ${shortDate(repair.doneOn, today)}${repair.areaName === null ? '' : `, ${repair.areaName}`}`
    return [
      ...bareGround(repair, name, rules),
      ...limits({ ...repair, untilOn: carried ?? repair.untilOn }, name, today),
      ...warmest(repair, name),
    ]
  })
}

/**
 * Filled or re-surfaced ground is bare like a fresh patch. As many usual pulls as the shop counts as the first ones
 * show that it releases, also where nobody wrote its coats down.
 */
function bareGround(repair: RepairCount, name: string, rules: UpkeepRules): Matter[] {
  if (repair.usualSince >= Math.max(1, rules.firstPulls)) return []
  const place = { areaId: repair.areaId, entryId: repair.entryId }
  const lacking = rules.coatsAfterStrip - repair.coatsSince
  const found: Matter[] = []
  if (rules.sealNeeded && !repair.sealedSince) {
    found.push(
      matter({
        ...place,
        code: 'repair-not-sealed',
        severity: 'stop',
        text: `${name}: not sealed since (${repair.what})`,
        word: 'bare',
        cure: 'Seal it, then coat it as new',
        settledBy: 'seal',
      }),
    )
  }
  if (lacking > 0) {
    found.push(
      matter({
        ...place,
        code: 'repair-too-few-coats',
        severity: 'stop',
        text: `${name}: ${repair.coatsSince} of ${rules.coatsAfterStrip} coats since (${repair.what})`,
        word: `${lacking} more ${lacking === 1 ? 'coat' : 'coats'}`,
        cure: 'Coat it as new; a spot of a few square centimetres is enough to hold a part',
        settledBy: 'coat',
      }),
    )
  } else if (!repair.tapeSlipsSince) {
    found.push(
      matter({
        ...place,
        code: 'repair-no-tape-test',
        severity: 'look',
        text: `${name}: no tape test since (${repair.what})`,
        word: 'tape test',
        cure: 'Press tape on the repair and beside it; it must slip',
        settledBy: 'tape-test',
      }),
    )
  }
  return found
}

function limits(repair: RepairCount, name: string, today: IsoDate): Matter[] {
  if (!repair.interim || repair.closed) return []
  const found: Matter[] = []
  const tell = (code: string, severity: 'stop' | 'look', text: string, word: string) =>
    found.push(
      matter({
        areaId: repair.areaId,
        entryId: repair.entryId,
        code,
        severity,
        text: `${name}, for the time being (${repair.what}): ${text}`,
        word,
        cure: 'Repair it for good, then close its matter',
        settledBy: 'settled',
      }),
    )
  if (repair.untilPulls !== null) {
    const left = repair.untilPulls - repair.pullsSince
    const made = `${repair.pullsSince} of ${repair.untilPulls} pulls made`
    if (left <= 0) tell('repair-limit-reached', 'stop', made, 'limit reached')
    else if (left <= nearPulls) {
      tell('repair-limit-near', 'look', made, `${left} ${left === 1 ? 'pull' : 'pulls'} left`)
    }
  }
  if (repair.untilOn !== null) {
    const left = daysBetween(today, repair.untilOn)
    const until = untilWords(repair.untilOn, today)
    if (left < 0) tell('repair-limit-reached', 'stop', until, 'limit passed')
    else if (left <= nearDays) {
      tell(
        'repair-limit-near',
        'look',
        until,
        left === 0 ? 'today' : `${left} ${left === 1 ? 'day' : 'days'} left`,
      )
    }
  }
  return found
}

function warmest(repair: RepairCount, name: string): Matter[] {
  if (repair.maxC === null || repair.closed) return []
  return [
    matter({
      areaId: repair.areaId,
      entryId: repair.entryId,
      code: 'repair-heat-limit',
      severity: 'note',
      text: `${name} (${repair.what}): no hotter than ${repair.maxC} °C`,
      word: `${repair.maxC} °C`,
      cure: 'Choose a cure below it',
      settledBy: null,
    }),
  ]
}

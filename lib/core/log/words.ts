import { type IsoDate, shortDate } from '../dates'
import { guessWords } from './guess-words'
import type { LogData, LogKind } from './kinds'
import { leakLossMbar } from './leak-matters'
import type { LogEntry } from './types'

/** The name of each kind of entry, as on a button and in the history. */
export const kindNames: Record<LogKind, string> = {
  cleared: 'Cleared to lay up',
  pull: 'Pull',
  strip: 'Stripped',
  clean: 'Cleaned',
  seal: 'Sealed',
  coat: 'Coats',
  'tape-test': 'Tape test',
  'test-patch': 'Test patch',
  'leak-check': 'Leak check',
  inspection: 'Inspection',
  damage: 'Damage',
  repair: 'Repair',
  'dowel-changed': 'Dowel changed',
  're-machined': 'Re-machined',
  heat: 'Heat',
  pins: 'Pins driven',
  measured: 'Measured points',
  moved: 'Moved',
  state: 'State',
  'patch-laid': 'Patch laid',
  proved: 'Proved',
  'before-book': 'Before the book',
  matter: 'Open matter',
  settled: 'Matter settled',
  note: 'Note',
  correction: 'Struck out',
}

/** What an entry says, in two parts: a few bold words, and the rest of the line without the note. */
export function entryWords(entry: LogEntry): { readonly what: string; readonly detail: string } {
  const spot = entry.patchNumber !== null ? `Patch ${entry.patchNumber}` : entry.areaName
  const where = spot ?? 'Whole face'
  switch (entry.kind) {
    case 'cleared':
      return {
        what: entry.data.proof ? 'Cleared for a proof pull' : 'Cleared to lay up',
        detail: joined(
          entry.data.open.length > 0 ? `open: ${entry.data.open.join('; ')}` : null,
          entry.data.because ? `because ${entry.data.because}` : null,
        ),
      }
    case 'pull':
      return {
        what: `Pull, ${entry.data.went}`,
        detail: joined(
          entry.data.serial ? `part ${entry.data.serial}` : null,
          entry.data.partFate === 'good'
            ? null
            : `part ${entry.data.partFate === 'rework' ? 'to rework' : 'scrapped'}`,
          entry.data.mouldFate === 'unharmed' ? null : `mould ${entry.data.mouldFate}`,
          entry.data.cureC === null ? null : `cured at ${entry.data.cureC} °C`,
        ),
      }
    case 'strip':
    case 'clean':
      return { what: kindNames[entry.kind], detail: joined(where, entry.data.product) }
    case 'seal':
      return {
        what: `${entry.data.coats} × sealer`,
        detail: joined(where, entry.data.product, entry.data.lot ? `lot ${entry.data.lot}` : null),
      }
    case 'coat':
      return {
        what: `${entry.data.coats} ${entry.data.coats === 1 ? 'coat' : 'coats'}`,
        detail: joined(
          where,
          entry.data.product,
          entry.data.lot ? `lot ${entry.data.lot}` : null,
          entry.data.minutesBetween === null ? null : `${entry.data.minutesBetween} min apart`,
        ),
      }
    case 'tape-test':
      return { what: `Tape ${entry.data.result}`, detail: where }
    case 'test-patch':
      return {
        what: `Test patch ${entry.data.result}`,
        detail: joined(entry.data.surface, entry.data.sealer, entry.data.agent),
      }
    case 'leak-check':
      return {
        what: 'Leak check',
        detail: joined(
          `${round(leakLossMbar(entry.data.startMbar, entry.data.endMbar))} mbar in ${round(entry.data.minutes)} min from ${round(entry.data.startMbar)} mbar`,
          entry.data.temperatureC === null
            ? entry.data.heat
            : `${entry.data.heat}, ${entry.data.temperatureC} °C`,
          `pins ${entry.data.pins}`,
          entry.data.bagging,
        ),
      }
    case 'inspection':
      return { what: `Inspected, ${entry.data.verdict}`, detail: joined(where, entry.data.what) }
    case 'damage':
      return {
        what:
          entry.data.weight === 'stop' ? 'Damage, stop' : entry.data.weight === 'mark' ? 'Mark' : 'Damage',
        detail: joined(onFace(entry, entry.data), entry.data.what),
      }
    case 'repair':
      return {
        what: `Repair, ${entry.data.method}`,
        detail: joined(
          onFace(entry, entry.data),
          entry.data.what,
          entry.data.interim ? `for the time being${limits(entry.data)}` : null,
          entry.data.maxC === null ? null : `at most ${round(entry.data.maxC)} °C`,
        ),
      }
    case 'dowel-changed':
      return {
        what: `${entry.data.tag} ${entry.data.what}`,
        detail: joined(
          placeTold(entry, entry.data),
          entry.data.diameterMm === null ? null : `⌀ ${entry.data.diameterMm} mm`,
        ),
      }
    case 're-machined':
      return {
        what: 'Re-machined',
        detail: joined(
          spot,
          entry.data.what,
          entry.data.depthMm === null ? null : `${round(entry.data.depthMm)} mm deep`,
          `by ${entry.data.by}`,
        ),
      }
    case 'heat':
      return {
        what: `${capital(entry.data.what === 'other' ? 'heat' : entry.data.what)} to ${round(entry.data.toC)} °C`,
        detail: joined(
          entry.data.holdMin === null ? null : `held ${round(entry.data.holdMin)} min`,
          entry.data.withPart ? 'with a part in it' : 'standing free',
        ),
      }
    case 'pins':
      return {
        what: entry.data.tag === null ? 'All pins driven' : `Pin ${entry.data.tag} driven`,
        detail: entry.data.insertions === 1 ? 'once' : `${entry.data.insertions} times`,
      }
    case 'measured':
      return {
        what: `${entry.data.points.length} ${entry.data.points.length === 1 ? 'point' : 'points'} measured`,
        detail: joined(
          entry.data.frame === 'area' ? where : 'datum axes',
          entry.data.instrument,
          entry.data.temperatureC === null ? null : `at ${round(entry.data.temperatureC)} °C`,
          entry.place ?? entry.data.points.map((point) => point.tag).join(' '),
        ),
      }
    case 'moved':
      return { what: 'Moved', detail: entry.data.place }
    case 'state':
      return {
        what: entry.data.on ? capital(entry.data.state) : `No longer ${entry.data.state}`,
        detail: joined(
          entry.data.reason,
          entry.data.untilOn ? `until ${longDate(entry.data.untilOn)}` : null,
        ),
      }
    case 'patch-laid':
      return {
        what: `Patch ${entry.data.number} laid`,
        detail: entry.data.lots.map((lot) => `${lot.material} lot ${lot.lot}`).join(', '),
      }
    case 'proved':
      return { what: `Patch ${entry.data.number} proved`, detail: '' }
    case 'before-book':
      return {
        what: `Before the book: ${guessWords({ low: entry.data.pullsLow, best: entry.data.pullsBest, high: entry.data.pullsHigh })} pulls`,
        detail: joined(
          entry.data.heatBest === null
            ? null
            : `${guessWords({ low: entry.data.heatLow ?? entry.data.heatBest, best: entry.data.heatBest, high: entry.data.heatHigh ?? entry.data.heatBest })} heats`,
          entry.data.what,
        ),
      }
    case 'matter':
      return {
        what: 'Open matter',
        detail: joined(
          entry.data.what,
          entry.data.who,
          entry.data.untilOn === null ? null : `until ${longDate(entry.data.untilOn)}`,
        ),
      }
    case 'settled':
      return {
        what: entry.data.outcome === 'closed' ? 'Matter closed' : 'Matter carried on',
        detail: joined(
          entry.data.how,
          entry.data.who,
          entry.data.untilOn === null ? null : `until ${longDate(entry.data.untilOn)}`,
        ),
      }
    case 'note':
      return { what: 'Note', detail: entry.areaName ?? '' }
    case 'correction':
      return { what: 'Struck out', detail: 'an earlier entry' }
  }
}

/** With its year: the history goes back. */
const longDate = (day: IsoDate): string => shortDate(day, '')

function limits(data: LogData['repair']): string {
  const told = joined(
    data.untilPulls === null ? null : `for ${data.untilPulls} ${data.untilPulls === 1 ? 'pull' : 'pulls'}`,
    data.untilOn === null ? null : `until ${longDate(data.untilOn)}`,
  )
  return told === '' ? '' : `: ${told}`
}

function joined(...parts: readonly (string | null)[]): string {
  return parts.filter((part): part is string => part !== null && part !== '').join(', ')
}

interface Spot {
  readonly uMm: number | null
  readonly vMm: number | null
}

/** "floor B5, 40 mm from D03 (u 412, v 88 mm)"; the figures alone where the grid isn't known. */
function placeTold({ place }: LogEntry, { uMm, vMm }: Spot): string | null {
  if (uMm === null || vMm === null) return null
  const figures = `u ${round(uMm)}, v ${round(vMm)} mm`
  return place === null ? figures : `${place} (${figures})`
}

/** The place on the face; what the place doesn't name already goes before it. */
function onFace(entry: LogEntry, spot: Spot): string {
  const told = placeTold(entry, spot)
  const named = told !== null && entry.place !== null
  const patch = entry.patchNumber === null ? null : `Patch ${entry.patchNumber}`
  return joined(named ? patch : (patch ?? entry.areaName ?? 'Whole face'), told)
}

function round(value: number): string {
  return String(Math.round(value * 10) / 10)
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

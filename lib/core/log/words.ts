import { leakLossMbar } from './leak-matters'
import type { LogEntry, LogKind } from './types'

/** The name of each kind of entry, as on a button and in the history. */
export const kindNames: Record<LogKind, string> = {
  cleared: 'Cleared to lay up',
  pull: 'Pull',
  strip: 'Stripped',
  clean: 'Cleaned',
  seal: 'Sealed',
  coat: 'Coats',
  'tape-test': 'Tape test',
  'leak-check': 'Leak check',
  inspection: 'Inspection',
  damage: 'Damage',
  'dowel-changed': 'Dowel changed',
  moved: 'Moved',
  state: 'State',
  'patch-laid': 'Patch laid',
  proved: 'Proved',
  note: 'Note',
  correction: 'Struck out',
}

/** What an entry says, in two parts: a few bold words, and the rest of the line without the note. */
export function entryWords(entry: LogEntry): { readonly what: string; readonly detail: string } {
  const where = entry.patchNumber !== null ? `Patch ${entry.patchNumber}` : (entry.areaName ?? 'Whole face')
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
        detail: joined(where, place(entry.data.uMm, entry.data.vMm), entry.data.what),
      }
    case 'dowel-changed':
      return {
        what: `${entry.data.tag} ${entry.data.what}`,
        detail: joined(
          place(entry.data.uMm, entry.data.vMm),
          entry.data.diameterMm === null ? null : `⌀ ${entry.data.diameterMm} mm`,
        ),
      }
    case 'moved':
      return { what: 'Moved', detail: entry.data.place }
    case 'state':
      return {
        what: entry.data.on ? capital(entry.data.state) : `No longer ${entry.data.state}`,
        detail: entry.data.reason,
      }
    case 'patch-laid':
      return {
        what: `Patch ${entry.data.number} laid`,
        detail: entry.data.lots.map((lot) => `${lot.material} lot ${lot.lot}`).join(', '),
      }
    case 'proved':
      return { what: `Patch ${entry.data.number} proved`, detail: '' }
    case 'note':
      return { what: 'Note', detail: entry.areaName ?? '' }
    case 'correction':
      return { what: 'Struck out', detail: 'an earlier entry' }
  }
}

function joined(...parts: readonly (string | null)[]): string {
  return parts.filter((part): part is string => part !== null && part !== '').join(', ')
}

function place(uMm: number | null, vMm: number | null): string | null {
  return uMm === null || vMm === null ? null : `u ${round(uMm)}, v ${round(vMm)} mm`
}

function round(value: number): string {
  return String(Math.round(value * 10) / 10)
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

import { entryWords, kindNames, type LogEntry, leakLossMbar } from '#lib/core/log/index'
import type { Cell, Row, TableColumn } from '../types'
import { day, figure, moment, shopTable, text, yesNo } from './define'

/** An entry with the mould or pattern that it is of, and the kind of the entry that put it right. */
export type LoggedEntry = LogEntry & {
  readonly mould: string | null
  readonly pattern: string | null
  readonly correctedByKind: string | null
}

/** Figures and words that entries carry, by their names in the log. A name means the same in every kind. */
const dataColumns: readonly TableColumn[] = [
  text('went', 'Went'),
  text('serial', 'Serial'),
  text('partFate', 'Part'),
  text('mouldFate', 'Mould left'),
  figure('cureC', 'Cure (°C)', 0),
  text('product', 'Product'),
  text('lot', 'Lot'),
  figure('coats', 'Coats'),
  figure('minutesBetween', 'Between coats (min)', 0),
  text('surface', 'Test surface'),
  text('sealer', 'Sealer'),
  text('agent', 'Release agent'),
  text('result', 'Result'),
  text('bagging', 'Bagging'),
  text('heat', 'Cold or hot'),
  figure('temperatureC', 'Temperature (°C)', 1),
  text('pins', 'Pins'),
  figure('volumeL', 'Volume (l)', 1),
  figure('startMbar', 'Start (mbar)', 1),
  figure('endMbar', 'End (mbar)', 1),
  figure('minutes', 'Time (min)', 1),
  figure('lossMbar', 'Loss (mbar)', 1),
  text('verdict', 'Verdict'),
  text('weight', 'Weight'),
  text('what', 'What'),
  text('method', 'Method'),
  yesNo('interim', 'For the time being'),
  figure('untilPulls', 'Until so many pulls'),
  day('untilOn', 'Until'),
  figure('maxC', 'At most (°C)', 0),
  text('tag', 'Tag'),
  figure('uMm', 'u (mm)', 1),
  figure('vMm', 'v (mm)', 1),
  figure('diameterMm', 'Diameter (mm)', 2),
  figure('depthMm', 'Depth (mm)', 2),
  text('by', 'Machined by'),
  figure('toC', 'Heated to (°C)', 0),
  figure('holdMin', 'Held (min)', 0),
  yesNo('withPart', 'With a part'),
  figure('insertions', 'Insertions'),
  text('instrument', 'Instrument'),
  text('frame', 'Frame'),
  text('points', 'Measured points (mm)'),
  figure('pullsLow', 'Pulls before, at least'),
  figure('pullsBest', 'Pulls before, best guess'),
  figure('pullsHigh', 'Pulls before, at most'),
  figure('heatLow', 'Heats before, at least'),
  figure('heatBest', 'Heats before, best guess'),
  figure('heatHigh', 'Heats before, at most'),
  text('place', 'Place'),
  text('state', 'State'),
  yesNo('on', 'State begins'),
  text('reason', 'Reason'),
  text('who', 'Who'),
  text('outcome', 'Outcome'),
  text('how', 'How'),
  text('open', 'Open then'),
  text('because', 'Because'),
  yesNo('proof', 'For a proof pull'),
  figure('number', 'Patch number'),
  text('lots', 'Lots'),
  text('planId', 'Plan id'),
  text('entryId', 'Entry meant'),
]

/** Kept under other names here, since entries have them in their heads. */
const own = new Set(dataColumns.map(({ key }) => key))

export const logTable = shopTable('log', {
  title: 'Log',
  about:
    'One row per entry, wrong ones and what put them right included: when, what, where, who, and every figure it carries.',
  narrowedBy: ['mould'],
  columns: [
    text('mould', 'Mould'),
    text('pattern', 'Pattern'),
    day('doneOn', 'Done on'),
    moment('doneAt', 'Done at'),
    text('precision', 'Known to the'),
    text('kind', 'Kind'),
    text('words', 'Entry'),
    text('detail', 'Detail'),
    text('area', 'Area'),
    figure('patch', 'Patch'),
    text('note', 'Note'),
    text('byName', 'By'),
    moment('writtenAt', 'Written'),
    text('standing', 'Counts'),
    text('taken', 'Taken from stock'),
    ...dataColumns,
    text('other', 'Other'),
    text('id', 'Id'),
    text('correctsId', 'Puts right'),
    text('correctedById', 'Put right by'),
    text('groupId', 'Entered together'),
  ],
})

/** An entry as a row; what it carries stands in a column of its own, and what has none under "Other". */
export function logRow(entry: LoggedEntry): Row {
  const { what, detail } = entryWords(entry)
  return {
    mould: entry.mould,
    pattern: entry.pattern,
    doneOn: entry.doneOn,
    doneAt: entry.doneAt,
    precision: entry.precision,
    kind: kindNames[entry.kind],
    words: what,
    detail,
    area: entry.areaName,
    patch: entry.patchNumber,
    note: entry.note,
    byName: entry.byName,
    writtenAt: entry.writtenAt,
    standing: standingWords(entry),
    taken: entry.uses.map(takenWords).join('; '),
    ...dataCells(entry),
    id: entry.id,
    correctsId: entry.correctsId,
    correctedById: entry.correctedById,
    groupId: entry.groupId,
  }
}

/** "650 twill lot 7: 4.5 m²" */
function takenWords({ name, lot, amount, unit }: LogEntry['uses'][number]): string {
  return `${name} lot ${lot}: ${amount} ${unit === 'm2' ? 'm²' : unit}`
}

function standingWords(entry: LoggedEntry): string {
  if (entry.correctedByKind === 'correction') return 'no, struck out'
  if (entry.correctedById !== null) return 'no, put right'
  if (entry.kind === 'correction') return 'strikes out'
  return 'yes'
}

function dataCells(entry: LoggedEntry): Row {
  const data: Readonly<Record<string, unknown>> =
    entry.kind === 'leak-check'
      ? { ...entry.data, lossMbar: leakLossMbar(entry.data.startMbar, entry.data.endMbar) }
      : entry.data
  const other = Object.keys(data)
    .filter((key) => !own.has(key))
    .map((key) => [key, plain(data[key])] as const)
    .filter(([, value]) => value !== null && value !== '')
  const cells = dataColumns.map(({ key, kind }) => [key, fitting(plain(data[key]), kind)])
  return {
    ...Object.fromEntries(cells),
    other: other.map(([key, value]) => `${key}: ${value}`).join('; '),
  }
}

/** A value that an older entry wrote in another form than its column's stands there as nothing rather than wrongly. */
function fitting(value: Cell, kind: TableColumn['kind']): Cell {
  if (kind === 'number') return typeof value === 'number' ? value : null
  if (kind === 'yes-no') return typeof value === 'boolean' ? value : null
  return value === null ? null : String(value)
}

/** Lists in one cell: "S200 lot 12; B650 lot 7". */
function plain(value: unknown): Cell {
  if (value === undefined || value === null) return null
  if (typeof value === 'number' || typeof value === 'boolean' || typeof value === 'string') return value
  if (Array.isArray(value)) return value.map(plain).join('; ')
  return Object.values(value)
    .filter((each) => each !== null)
    .map(plain)
    .join(' ')
}

export const pullsTable = shopTable('pulls', {
  title: 'Pulls',
  about:
    'One row per pull that counts, numbered for its mould: how it came out, the part, whether it was cleared.',
  narrowedBy: ['mould'],
  columns: [
    text('mould', 'Mould'),
    figure('pullNo', 'Pull'),
    day('doneOn', 'Done on'),
    moment('doneAt', 'Done at'),
    text('went', 'Went'),
    yesNo('cleared', 'Cleared before'),
    text('serial', 'Serial'),
    text('partFate', 'Part'),
    text('mouldFate', 'Mould left'),
    figure('cureC', 'Cure (°C)', 0),
    text('note', 'Note'),
    text('byName', 'By'),
    text('id', 'Entry id'),
  ],
})

export const mattersTable = shopTable('open-matters', {
  title: 'Open matters',
  about: 'One row per matter that somebody has to see to: what, who, until when.',
  narrowedBy: ['mould'],
  columns: [
    text('mould', 'Mould'),
    text('pattern', 'Pattern'),
    text('area', 'Area'),
    text('kind', 'Kind'),
    text('what', 'What'),
    text('who', 'Who'),
    day('untilOn', 'Until'),
    yesNo('carried', 'Carried on'),
    day('doneOn', 'Since'),
    text('byName', 'Written by'),
    text('id', 'Entry id'),
  ],
})

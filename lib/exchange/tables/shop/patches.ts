import { becauseKey, type Side, sideWords } from '#lib/core/repair/index'
import type { Finding } from '#lib/core/result'
import type { Row, TableColumn } from '../types'
import { figure, moment, shopTable, text, yesNo } from './define'

/** Which version of which patch a row is about. */
const ofPlan: readonly TableColumn[] = [
  text('mould', 'Mould'),
  figure('patch', 'Patch'),
  figure('version', 'Version'),
  text('planState', 'State of the plan'),
]

export const patchesTable = shopTable('patches', {
  title: 'Patches',
  about:
    'One row per version of a patch plan: where, how it is worked, its figures, and who took which step when.',
  narrowedBy: ['mould', 'patch'],
  columns: [
    ...ofPlan,
    text('title', 'Title'),
    text('reason', 'Why'),
    text('area', 'Area'),
    text('place', 'Where'),
    text('side', 'Worked'),
    text('edge', 'Edge'),
    figure('plies', 'Plies'),
    figure('lengthMm', 'Taper (mm)', 1),
    figure('ratioReached', 'Ratio reached', 1),
    figure('builtThicknessMm', 'Built thickness (mm)', 2),
    figure('measuredThicknessMm', 'Measured thickness (mm)', 2),
    figure('openingAreaMm2', 'Opening (mm²)', 0),
    figure('footprintAreaMm2', 'Footprint (mm²)', 0),
    figure('stops', 'Stops'),
    figure('looks', 'Looks'),
    figure('linesTicked', 'Job lines done'),
    figure('lines', 'Job lines'),
    moment('createdAt', 'Sketched'),
    text('createdByName', 'Sketched by'),
    moment('signedAt', 'Signed'),
    text('signedByName', 'Signed by'),
    yesNo('selfChecked', 'Self-checked'),
    moment('benchAt', 'On the bench'),
    { key: 'laidOn', title: 'Laid', kind: 'date' },
    { key: 'provedOn', title: 'Proved', kind: 'date' },
    moment('putByAt', 'Put by'),
    text('putByReason', 'Put by because'),
    text('note', 'Note'),
    text('calculationVersion', 'Version of the calculation'),
    text('patchId', 'Patch id'),
    text('planId', 'Plan id'),
  ],
})

/** The side in the words of the list of patches. */
export function patchRow(row: Row): Row {
  return { ...row, side: sideWords[row.side as Side]?.short ?? row.side ?? null }
}

export const plansPliesTable = shopTable('patch-plies', {
  title: 'Plies of patch plans',
  about: 'One row per ply of a plan, in laying order.',
  narrowedBy: ['mould', 'patch'],
  columns: [
    ...ofPlan,
    figure('layingOrder', 'Laid as'),
    figure('replaces', 'Replaces ply'),
    text('material', 'Material'),
    figure('directionDeg', 'Direction (°)', 1),
    figure('thicknessMm', 'Thickness (mm)', 3),
    figure('stepMm', 'Step (mm)', 2),
    figure('growthMm', 'Beyond the opening (mm)', 2),
    figure('areaMm2', 'Area (mm²)', 0),
    figure('perimeterMm', 'Perimeter (mm)', 1),
    figure('acrossUMm', 'Along u (mm)', 1),
    figure('acrossVMm', 'Along v (mm)', 1),
    figure('distanceToEdgeMm', 'To the edge (mm)', 1),
  ],
})

export const takeOffTable = shopTable('take-off', {
  title: 'Take-off',
  about: 'One row per material of a plan: what comes off the roll.',
  narrowedBy: ['mould', 'patch'],
  columns: [
    ...ofPlan,
    text('material', 'Material'),
    figure('netAreaM2', 'Net area (m²)', 3),
    figure('grossAreaM2', 'Gross area (m²)', 3),
    figure('rollLengthM', 'Off the roll (m)', 2),
    figure('massKg', 'Mass (kg)', 3),
    figure('offcutPercent', 'Offcut (%)', 0),
    figure('strips', 'Strips'),
  ],
})

export const jobLinesTable = shopTable('job-lines', {
  title: 'Job lines',
  about: 'One row per line of work of a plan, in order, with who ticked it when.',
  narrowedBy: ['mould', 'patch'],
  columns: [
    ...ofPlan,
    figure('no', 'Line'),
    text('title', 'What'),
    text('detail', 'How'),
    text('cautions', 'Cautions'),
    yesNo('secondPerson', 'Second person'),
    moment('tickedAt', 'Done'),
    text('tickedByName', 'Done by'),
    text('tickNote', 'Note'),
    text('code', 'Code'),
  ],
})

export const findingsTable = shopTable('findings', {
  title: 'Findings',
  about: 'One row per finding of a plan: stop, look or note, what to do, and why a look was accepted.',
  narrowedBy: ['mould', 'patch'],
  columns: [
    ...ofPlan,
    text('severity', 'Weight'),
    text('text', 'Finding'),
    text('findingPlace', 'Place'),
    text('cure', 'Cure'),
    text('because', 'Accepted because'),
    text('code', 'Code'),
  ],
})

/** The findings of a plan as rows; `head` tells which plan. */
export function findingRows(
  head: Row,
  findings: readonly Finding[],
  becauses: Readonly<Record<string, string>>,
): Row[] {
  return findings.map((finding) => ({
    ...head,
    severity: finding.severity,
    text: finding.text,
    findingPlace: finding.place,
    cure: finding.cure,
    because: becauses[becauseKey(finding)] ?? null,
    code: finding.code,
  }))
}

import { becauseKey } from '#lib/core/repair/index'
import type { JobLine } from '#lib/core/repair/types'
import type { Finding } from '#lib/core/result'
import { figure } from '#lib/core/units'
import { acrossWords, listFitsCorner } from './bench-drawing'
import { type Cell, type Column, type Flow, heading, innerOf, tableHead, tableRow } from './flow'
import { rect, rule } from './paper'
import type { PatchSheet } from './types'
import { words } from './words'

const semibold = { font: 'semibold' } as const
const soft = { role: 'soft', sizeMm: 2.5 } as const

/** Stop, look, note, each look with its because. */
export function drawFindings(flow: Flow, sheet: PatchSheet): void {
  heading(flow, 'Stop, look, note', 12)
  const inner = innerOf(flow.paper)
  const columnsWith = (answerMm: number): readonly Column[] => [
    { x: inner.left, width: 12 },
    { x: inner.left + 13, width: inner.width - 13 - answerMm - (answerMm > 0 ? 4 : 0) },
    { x: inner.right - answerMm, width: answerMm },
  ]
  const { findings, becauses } = sheet
  if (findings.length === 0) {
    tableRow(flow, columnsWith(0), { cells: [[], [{ text: 'Nothing found.' }], []] })
    return
  }
  for (const severity of ['stop', 'look', 'note'] as const) {
    for (const finding of findings.filter((each) => each.severity === severity)) {
      tableRow(flow, columnsWith(severity === 'note' ? 0 : 58), {
        cells: [[{ text: severity, style: semibold }], findingCells(finding), answer(finding, becauses)],
      })
    }
  }
}

function findingCells(finding: Finding): readonly Cell[] {
  const place = finding.place === null ? '' : `${finding.place}: `
  const cure = finding.cure === null ? [] : [{ text: finding.cure, style: soft }]
  return [{ text: `${place}${finding.text}` }, ...cure]
}

function answer(finding: Finding, becauses: PatchSheet['becauses']): readonly Cell[] {
  if (finding.severity === 'stop') return [{ text: "can't be signed as it stands", style: semibold }]
  if (finding.severity === 'note') return []
  const because = becauses[becauseKey(finding)]
  return because === undefined || because.trim() === ''
    ? [{ text: 'because: not given yet', style: semibold }]
    : [{ text: `because ${because}` }]
}

/** All plies as a table, when the drawing's corner can't hold them. */
export function drawPlyList(flow: Flow, sheet: PatchSheet): void {
  if (listFitsCorner(sheet)) return
  heading(flow, 'Plies, in laying order', 16)
  const inner = innerOf(flow.paper)
  const columns: readonly Column[] = [
    { x: inner.left, width: 8, anchor: 'end' },
    { x: inner.left + 12, width: 70 },
    { x: inner.left + 84, width: 18, anchor: 'end' },
    { x: inner.left + 106, width: 28, anchor: 'end' },
    { x: inner.left + 140, width: inner.width - 140, anchor: 'end' },
  ]
  const head = () => tableHead(flow, columns, ['#', 'Ply', 'Direction', 'Across, mm', 'Area, m²'])
  head()
  for (const ply of sheet.patch.plies) {
    const cells = [
      `${ply.layingOrder}`,
      ply.replaces === null ? `cover, ${ply.material.name}` : ply.material.name,
      `${figure(ply.directionDeg, 1)}°`,
      acrossWords(ply),
      (ply.areaMm2 / 1e6).toFixed(3),
    ].map((text) => [{ text }])
    tableRow(flow, columns, { cells }, head)
  }
}

/** Material off the roll. */
export function drawTakeOff(flow: Flow, sheet: PatchSheet): void {
  const { takeOff } = sheet.patch
  heading(flow, 'What it takes', 16)
  const inner = innerOf(flow.paper)
  const columns: readonly Column[] = [
    { x: inner.left, width: 60 },
    { x: inner.left + 62, width: 20, anchor: 'end' },
    { x: inner.left + 84, width: 24, anchor: 'end' },
    { x: inner.left + 110, width: 26, anchor: 'end' },
    { x: inner.left + 138, width: 16, anchor: 'end' },
    { x: inner.left + 156, width: inner.width - 156, anchor: 'end' },
  ]
  const names = ['Material', 'In plies, m²', 'Off the roll, m²', 'Roll length, m', 'Mass, kg', 'Offcut, %']
  const head = () => tableHead(flow, columns, names)
  head()
  for (const line of takeOff) {
    const cells = [
      line.material.name,
      line.netAreaM2.toFixed(2),
      line.grossAreaM2.toFixed(2),
      line.rollLengthM.toFixed(2),
      line.massKg.toFixed(2),
      (line.offcutShare * 100).toFixed(0),
    ].map((text) => [{ text }])
    tableRow(flow, columns, { cells }, head)
  }
}

const box = 4.6

/** The job in its order, each line with a box to tick, its cautions, and room for name and time. */
export function drawJobLines(flow: Flow, sheet: PatchSheet): void {
  heading(flow, 'Job lines', 30)
  const inner = innerOf(flow.paper)
  const columns: readonly Column[] = [
    { x: inner.left, width: box },
    { x: inner.left + 6, width: 6, anchor: 'end' },
    { x: inner.left + 14.5, width: inner.width - 74 },
    { x: inner.right - 56, width: 32 },
    { x: inner.right - 22, width: 22 },
  ]
  const head = () => tableHead(flow, columns, ['Done', '', 'What', 'Name', 'Day, time'])
  head()
  for (const [i, line] of sheet.patch.jobLines.entries()) {
    tableRow(flow, columns, jobRow(flow, line, i + 1, columns), head)
  }
}

function jobRow(flow: Flow, line: JobLine, number: number, columns: readonly Column[]) {
  const cautions = line.cautions.map((text) => ({
    text: `Caution: ${text}`,
    style: { ...semibold, sizeMm: 2.5 },
  }))
  const detail = line.detail === '' ? [] : [{ text: line.detail, style: { sizeMm: 2.5 } }]
  const [tick, , , name, time] = columns
  return {
    cells: [
      [],
      [{ text: `${number}`, style: soft }],
      [{ text: line.title, style: semibold }, ...detail, ...cautions],
      [],
      [],
    ],
    leastMm: line.secondPerson ? 15 : 7.6,
    extra: (y: number, height: number) => {
      const { paper } = flow
      const lines = line.secondPerson ? [y + 1.7, y + 1.7 + 7.6] : [y + 1.7]
      for (const [i, at] of lines.entries()) {
        rect(paper, tick!.x, at, box, box, 'thin')
        const foot = Math.min(y + height - 0.8, at + box + 0.6)
        if (i === 1) words(paper, name!.x, foot - 0.9, '2nd', { sizeMm: 2.2, role: 'soft' })
        for (const column of [name!, time!]) {
          rule(paper, [column.x, foot], [column.x + column.width, foot], 'dimension', 'soft')
        }
      }
    },
  }
}

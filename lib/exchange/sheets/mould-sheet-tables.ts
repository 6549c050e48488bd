import type { FaceModel } from '#lib/core/drawing/index'
import { bounds, type Point, placeWords } from '#lib/core/geometry/index'
import { figure } from '#lib/core/units'
import { paperDate } from './dates'
import { type Column, type Flow, heading, innerOf, tableHead, tableRow } from './flow'
import type { MouldSheet } from './mould-sheet'

const semibold = { font: 'semibold' } as const
const soft = { role: 'soft', sizeMm: 2.5 } as const

/** What must be settled before the next lay-up, each line with its cure and room to sign it off. */
export function drawMatters(flow: Flow, { matters }: MouldSheet): void {
  heading(flow, 'Before the next lay-up', 12)
  const { left, width } = innerOf(flow.paper)
  const columns: readonly Column[] = [
    { x: left, width: 12 },
    { x: left + 13, width: width - 13 - 70 },
    { x: left + width - 68, width: 28 },
    { x: left + width - 38, width: 38 },
  ]
  if (matters.length === 0) {
    tableRow(flow, columns, { cells: [[], [{ text: 'Nothing stands against the next lay-up.' }], [], []] })
    return
  }
  const head = () => tableHead(flow, columns, ['', 'What, and its cure', '', 'Settled: name, day'])
  head()
  for (const { severity, text, cure, word } of matters) {
    tableRow(
      flow,
      columns,
      {
        cells: [
          [{ text: severity, style: semibold }],
          [{ text }, ...(cure ? [{ text: cure, style: soft }] : [])],
          [{ text: word, style: semibold }],
          [],
        ],
        leastMm: 5.5,
      },
      head,
    )
  }
}

/** Patches and planned openings by their place, to be found with a rule from the nearest point. */
export function drawPlaces(flow: Flow, { faces }: MouldSheet): void {
  const rows = faces.flatMap((face) => [
    ...face.patches.map(({ name, face: loops }) => ({
      name,
      what: 'patch',
      at: placeOf(face, middleOf(loops.map((outer) => ({ outer, holes: [] })))),
    })),
    ...face.openings.map(({ name, regions }) => ({
      name,
      what: 'opening, planned',
      at: placeOf(face, middleOf(regions)),
    })),
  ])
  if (rows.length === 0) return
  heading(flow, 'Patches and openings, by their middle', 12)
  const { left, width } = innerOf(flow.paper)
  const columns: readonly Column[] = [
    { x: left, width: 22 },
    { x: left + 24, width: 32 },
    { x: left + 58, width: width - 58 },
  ]
  const head = () => tableHead(flow, columns, ['', 'What', 'Where'])
  head()
  for (const { name, what, at } of rows) {
    tableRow(
      flow,
      columns,
      { cells: [[{ text: name, style: semibold }], [{ text: what }], [{ text: at }]] },
      head,
    )
  }
}

/** Locating points that stand elsewhere than before: old place, new place, how far. */
export function drawMoves(flow: Flow, { faces }: MouldSheet): void {
  const rows = faces.flatMap((face) =>
    face.dowels.flatMap(({ tag, at, oldPlace, setOn }) =>
      oldPlace === null
        ? []
        : [
            [
              tag,
              face.areaName,
              uv(oldPlace),
              uv(at),
              `${figure(Math.hypot(at[0] - oldPlace[0], at[1] - oldPlace[1]), 1)} mm`,
              setOn === null ? 'by its table' : `by the log, ${paperDate(setOn)}`,
            ],
          ],
    ),
  )
  if (rows.length === 0) return
  heading(flow, 'Moved points, u and v in mm', 12)
  const { left, width } = innerOf(flow.paper)
  const columns: readonly Column[] = [
    { x: left, width: 18 },
    { x: left + 20, width: 26 },
    { x: left + 48, width: 34 },
    { x: left + 84, width: 34 },
    { x: left + 120, width: 16, anchor: 'end' },
    { x: left + 140, width: width - 140 },
  ]
  const head = () => tableHead(flow, columns, ['Point', 'Area', 'Stood at', 'Stands at', 'By', 'From'])
  head()
  for (const row of rows) tableRow(flow, columns, { cells: row.map((text) => [{ text }]) }, head)
}

function uv([u, v]: Point): string {
  return `${figure(u, 2)}; ${figure(v, 2)}`
}

function middleOf(regions: Parameters<typeof bounds>[0]): Point {
  const [uMin, vMin, uMax, vMax] = bounds(regions)
  return [(uMin + uMax) / 2, (vMin + vMax) / 2]
}

function placeOf(face: FaceModel, at: Point): string {
  return placeWords(at, { name: face.areaName, grid: face.grid }, face.dowels, 'print')
}

import 'server-only'
import type { Actor } from '#lib/schema/actor'
import { pointsOfText, textOfPoints } from '#lib/schema/points-text'
import { insetLine } from '#lib/services/area-sketch'
import { readOutline } from '#lib/services/outline'
import { formObject } from '#lib/web/action'
import { found } from '#lib/web/page'

type Fields = Record<string, string>
type Points = readonly (readonly [number, number])[]

export type AreaRead =
  | { readonly ok: true; readonly raw: Record<string, unknown> }
  | {
      readonly ok: false
      readonly message: string
      readonly fields: Fields
      readonly typed: Record<string, unknown>
    }

/** The axes by name, in the mould's datum frame. */
const axes: Readonly<Record<string, readonly [number, number, number]>> = {
  '+x': [1, 0, 0],
  '-x': [-1, 0, 0],
  '+y': [0, 1, 0],
  '-y': [0, -1, 0],
  '+z': [0, 0, 1],
  '-z': [0, 0, -1],
}
export const axisNames = Object.keys(axes)

export function axisName(axis: readonly number[]): string {
  return axisNames.find((name) => axes[name]?.every((part, index) => part === axis[index])) ?? axis.join('; ')
}

/** An area as its form holds it, with outlines read from text or from a file. */
export async function areaOf(actor: Actor, form: FormData): Promise<AreaRead> {
  const typed = formObject(form)
  const fields: Fields = {}
  const boundary = await boundaryOf(actor, form, typed, fields)
  if (boundary) {
    typed.boundaryText = textOfPoints(boundary)
    typed.boundaryKind = 'points'
  }
  const lines = rowsOf(typed, 'line').filter((row) => row.name || row.points || row.inset)
  const read: unknown[] = []
  for (const row of lines) {
    const points = await linePoints(actor, row, boundary, fields)
    if (points) read.push({ name: row.name, kind: row.kind, closed: row.inset ? 'true' : row.closed, points })
  }
  const keepOuts = rowsOf(typed, 'keep')
    .filter((row) => row.name || row.points)
    .flatMap((row) => {
      const outline = textPoints(row.points, `${row.at}.points`, fields)
      return outline ? [{ name: row.name, kind: row.kind, outline }] : []
    })
  if (Object.keys(fields).length > 0 || !boundary) {
    return { ok: false, message: 'Some outlines need attention', fields, typed }
  }
  const grid = gridOrigin(typed, boundary)
  return {
    ok: true,
    raw: {
      ...typed,
      uAxis: axisOf(String(typed.uAxisText ?? '')),
      vAxis: axisOf(String(typed.vAxisText ?? '')),
      boundary,
      lines: read,
      keepOuts,
      gridOriginMm: grid,
    },
  }
}

interface Row extends Record<string, string> {
  readonly at: string
}

/** The rows "line0", "line1" ... of the form. */
function rowsOf(typed: Record<string, unknown>, name: string): Row[] {
  return Object.entries(typed)
    .filter(([key]) => new RegExp(`^${name}\\d+$`).test(key))
    .map(([key, row]) => ({ ...(row as Record<string, string>), at: key }))
}

async function boundaryOf(
  actor: Actor,
  form: FormData,
  typed: Record<string, unknown>,
  fields: Fields,
): Promise<Points | null> {
  const file = form.get('boundaryFile')
  if (file instanceof File && file.size > 0) {
    const unit = String(typed.boundaryUnit ?? '')
    const read = await readOutline(actor, {
      name: file.name,
      bytes: new Uint8Array(await file.arrayBuffer()),
      unit: unit === 'mm' || unit === 'cm' || unit === 'm' || unit === 'in' ? unit : null,
    })
    const loop = read.loops[0]
    if (loop && read.verdict.startsWith('accept')) return loop.points
    fields.boundaryText = read.findings
      .map((finding) => [finding.text, finding.cure].filter(Boolean).join(' '))
      .join(' ')
    return null
  }
  if (typed.boundaryKind === 'rectangle') {
    const size = pointsOfText(`${String(typed.rectangleLength ?? '')}; ${String(typed.rectangleWidth ?? '')}`)
    const [length, width] = size.ok ? (size.points[0] ?? [0, 0]) : [0, 0]
    if (size.ok && length > 0 && width > 0) {
      return [
        [0, 0],
        [length, 0],
        [length, width],
        [0, width],
      ]
    }
    fields.rectangleLength = 'Give length and width in mm, both above nought'
    return null
  }
  return textPoints(String(typed.boundaryText ?? ''), 'boundaryText', fields)
}

function textPoints(text: string | undefined, field: string, fields: Fields): Points | null {
  const read = pointsOfText(text ?? '')
  if (!read.ok) {
    fields[field] = read.reason
    return null
  }
  if (read.points.length < 2) {
    fields[field] = 'Give the points, a line for each'
    return null
  }
  return read.points
}

async function linePoints(
  actor: Actor,
  row: Row,
  boundary: Points | null,
  fields: Fields,
): Promise<Points | null> {
  if (!row.inset) return textPoints(row.points, `${row.at}.points`, fields)
  const inset = pointsOfText(`${row.inset}; 0`)
  const insetMm = inset.ok ? inset.points[0]?.[0] : undefined
  if (!insetMm || insetMm <= 0) {
    fields[`${row.at}.inset`] = 'Give a distance in mm'
    return null
  }
  if (!boundary) return null
  try {
    return await found(insetLine(actor, { boundary: boundary.map(([u, v]) => [u, v]), insetMm }))
  } catch (error) {
    fields[`${row.at}.inset`] = error instanceof Error ? error.message : 'Not possible'
    return null
  }
}

function axisOf(text: string): readonly string[] {
  const named = axes[text.trim().toLowerCase()]
  return named ? named.map(String) : text.split(/[;\s]+/).filter(Boolean)
}

/** A typed origin stands; else the grid begins at the top left corner of what it was first laid on. */
function gridOrigin(typed: Record<string, unknown>, boundary: Points): readonly string[] {
  const given = [String(typed.gridU ?? '').trim(), String(typed.gridV ?? '').trim()]
  if (given[0] !== '' && given[1] !== '') return given
  return [String(Math.min(...boundary.map(([u]) => u))), String(Math.max(...boundary.map(([, v]) => v)))]
}

import 'server-only'
import type { Finding } from '#lib/core/result'
import type { Actor } from '#lib/schema/actor'
import type { FieldErrors } from '#lib/schema/form'
import { readOutline } from '#lib/services/outline'
import { formObject } from '#lib/web/action'

/** Rows of cover plies that the form has room for. */
export const coverRows = ['0', '1', '2'] as const

/** What an outline is called that was drawn on the face instead of read from a file. */
export const drawnName = 'drawn on the face'

/** A drawn outline lies where it was drawn. */
const asDrawn = { shiftMm: { 0: '0', 1: '0' }, turnDeg: '0', mirrored: 'false' }

export type SketchRead =
  | {
      readonly ok: true
      readonly raw: Record<string, unknown>
      readonly outline: OutlineRead | null
      /** What the form holds, to come back with if it is refused further on. */
      readonly typed: Record<string, unknown>
    }
  | {
      readonly ok: false
      readonly message: string
      readonly fields: FieldErrors
      readonly typed: Record<string, unknown>
    }

/** What came of an outline that was pasted or uploaded. */
export interface OutlineRead {
  readonly text: string
  readonly findings: readonly Finding[]
}

/** The sketch in a form, its outline read from the file or the pasted text. */
export async function sketchOf(actor: Actor, form: FormData): Promise<SketchRead> {
  const typed = formObject(form)
  const raw: Record<string, unknown> = {
    ...typed,
    measuredThicknessMm: parts(typed.thickness),
    coverPlies: coverRows
      .map((index) => ({
        materialId: String(typed[`cover${index}`] ?? ''),
        directionDeg: String(typed[`coverDirection${index}`] ?? ''),
      }))
      .filter((row) => row.materialId !== ''),
  }
  const given = (typed.opening ?? {}) as Record<string, unknown>
  const drawn = given.kind === 'drawn'
  if (!drawn && given.kind !== 'outline') return { ok: true, raw, outline: null, typed }
  const opening = drawn ? { ...given, kind: 'outline', placement: asDrawn } : given
  const file = form.get('outlineFile')
  const uploaded = !drawn && file instanceof File && file.size > 0 ? file : null
  const pasted = String(typed.outlineText ?? '')
  if (!uploaded && pasted.trim() === '') {
    return refused(typed, 'Give the outline', {
      outlineText: drawn
        ? 'Draw the opening on the face and close it, or write its corners as coordinates'
        : 'Paste coordinates, or choose a DXF, SVG or CSV file',
    })
  }
  const unit = drawn ? 'mm' : String(typed.outlineUnit ?? '')
  const read = await readOutline(actor, {
    name: uploaded?.name ?? 'pasted',
    bytes: uploaded ? new Uint8Array(await uploaded.arrayBuffer()) : new TextEncoder().encode(pasted),
    unit: unit === 'mm' || unit === 'cm' || unit === 'm' || unit === 'in' ? unit : null,
  })
  const loop = read.loops[0]
  const told = read.findings
    .map((finding) => [finding.text, finding.cure].filter(Boolean).join(' '))
    .join(' ')
  if ((read.verdict !== 'accept' && read.verdict !== 'accept-with-notice') || !loop) {
    return refused(typed, "The outline can't be used as it is", { outlineText: told || 'No outline found' })
  }
  // From here on the outline is in millimetres: the text holds what was read, so that a file need not come again.
  const text = loop.points.map(([u, v]) => `${round(u)}; ${round(v)}`).join('\n')
  return {
    ok: true,
    raw: {
      ...raw,
      outlineText: text,
      outlineUnit: 'mm',
      opening: {
        ...opening,
        name: drawn ? drawnName : (uploaded?.name ?? 'pasted'),
        points: loop.points,
      },
    },
    outline: { text, findings: read.findings },
    typed: { ...typed, outlineText: text, outlineUnit: 'mm' },
  }
}

function refused(typed: Record<string, unknown>, message: string, fields: FieldErrors): SketchRead {
  return { ok: false, message, fields, typed }
}

/** Readings parted by semicolons or blanks; a comma stays a decimal comma. */
function parts(value: unknown): string[] {
  return String(value ?? '')
    .split(/[;\s]+/)
    .filter((part) => part !== '')
}

function round(mm: number): number {
  return Math.round(mm * 1000) / 1000
}

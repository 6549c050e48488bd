'use client'
import { type KeyboardEvent, useState } from 'react'
import {
  type FaceModel,
  type FaceSheet,
  type OutlineEdit,
  type OutlineHistory,
  pxPerPaperMm,
  toDrawing,
  toFace,
  windowOf,
} from '#lib/core/drawing/index'
import { loopBounds, type Point, type SnapTargets, snap } from '#lib/core/geometry/index'
import { figure } from '#lib/core/units'
import { offersOf } from './use-outline-tool'
import type { SheetViewState } from './use-sheet-view'
import { arrows, keyAct } from './view-buttons'

/** Arrows move the cursor by so much, mm. */
const cursorSteps = { plain: 1, shift: 10, alt: 0.1 } as const
/** How near the cursor must be to be caught with S, px. */
const catchPx = 30
/** The cursor on the first corner closes the outline, mm. */
const samePlaceMm = 0.05

export interface OutlineKeys {
  readonly cursor: Point | null
  /** What the last key did, for a reader who can't see it. */
  readonly said: string
  readonly press: (event: KeyboardEvent) => void
}

/** Drawing by keyboard alone: a cursor that arrows move, corners set and taken back, the window zoomed. */
export function useOutlineKeys({
  history,
  edit,
  model,
  sheet,
  targets,
  state: { view, act },
  moved,
}: {
  readonly history: OutlineHistory
  readonly edit: (edit: OutlineEdit) => void
  readonly model: FaceModel
  readonly sheet: FaceSheet
  readonly targets: SnapTargets
  readonly state: SheetViewState
  readonly moved: (to: Point) => void
}): OutlineKeys {
  const [cursor, setCursor] = useState<Point | null>(null)
  const [said, setSaid] = useState('')
  const { points, closed } = history.now
  const placement = sheet.faces[0]!.placement

  /** The cursor begins at the last corner, else in the middle of the face or of what is shown of it. */
  const here = (): Point => {
    const last = points[points.length - 1]
    if (cursor ?? last) return cursor ?? last!
    const { left, top, right, bottom } = windowOf(view, sheet.list)
    const [uMin, vMin, uMax, vMax] = loopBounds(model.boundary)
    const [u, v] =
      view.zoom > 1
        ? toFace(placement, [(left + right) / 2, (top + bottom) / 2])
        : [(uMin + uMax) / 2, (vMin + vMax) / 2]
    return [Math.round(u), Math.round(v)]
  }
  const show = (to: Point) => {
    setCursor(to)
    moved(to)
    act({ kind: 'follow', point: toDrawing(placement, to) })
  }
  const setCorner = () => {
    const to = here()
    show(to)
    const at = (point: Point | undefined) =>
      point !== undefined && Math.hypot(point[0] - to[0], point[1] - to[1]) < samePlaceMm
    if (!closed && points.length >= 3 && at(points[0])) {
      edit({ kind: 'close' })
      setSaid('Closed.')
    } else if (at(points[points.length - 1])) {
      setSaid('There is a corner here; move the cursor first.')
    } else {
      edit({ kind: 'add', at: to })
      setSaid(`Corner at u ${figure(to[0], 1)}, v ${figure(to[1], 1)}.`)
    }
  }
  const closeOrOpen = () => {
    edit({ kind: closed ? 'open' : 'close' })
    setSaid(closed ? 'Opened.' : points.length < 3 ? 'Three corners at least.' : 'Closed.')
  }
  const catchNearest = () => {
    const reachMm = (catchPx * sheet.list.denominator) / view.zoom / pxPerPaperMm
    const snapped = snap(here(), targets, offersOf(history.now, null), reachMm)
    if (snapped) show([roundMm(snapped.at[0], 3), roundMm(snapped.at[1], 3)])
    setSaid(snapped ? `Caught by ${snapped.words}.` : 'Nothing near to be caught by.')
  }

  const takeBack = () => {
    edit({ kind: 'take-back' })
    setSaid('Corner taken back.')
  }

  const press = (event: KeyboardEvent) => {
    const key = event.key.toLowerCase()
    const ctrl = event.ctrlKey || event.metaKey
    if (event.target !== event.currentTarget) return
    const arrow = arrows[event.key]
    const acts: Readonly<Record<string, () => void>> = {
      enter: setCorner,
      backspace: takeBack,
      delete: takeBack,
      c: closeOrOpen,
      s: catchNearest,
    }
    if (ctrl) {
      if (key !== 'z' && key !== 'y') return
      edit({ kind: key === 'y' || event.shiftKey ? 'redo' : 'undo' })
    } else if (arrow) {
      const by = event.shiftKey ? cursorSteps.shift : event.altKey ? cursorSteps.alt : cursorSteps.plain
      const [u, v] = here()
      show([roundMm(u + arrow[0] * by, 3), roundMm(v - arrow[1] * by, 3)])
      setSaid('')
    } else if (acts[key]) {
      acts[key]()
    } else {
      const wanted = keyAct(event.key, view, sheet.list)
      if (wanted === null) return
      act(wanted)
    }
    event.preventDefault()
  }
  return { cursor, said, press }
}

/** Tenths added up leave crumbs behind; what is stored reads as it was stepped. */
function roundMm(mm: number, decimals: number): number {
  const share = 10 ** decimals
  return Math.round(mm * share) / share
}

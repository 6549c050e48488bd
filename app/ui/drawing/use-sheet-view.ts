'use client'
import { useEffect, useMemo, useReducer, useState } from 'react'
import {
  changeView,
  type DisplayList,
  type FaceModel,
  type FaceSheet,
  relaidSheet,
  type SeenFrom,
  type SheetView,
  type ViewAct,
  wholeSheet,
} from '#lib/core/drawing/index'

export interface SheetViewState {
  readonly view: SheetView
  readonly act: (act: ViewAct) => void
  /** The list laid out for the zoom that the view came to rest at. */
  readonly list: DisplayList
}

/** Names are placed anew when the zoom has come to rest, not at every step of a pinch. */
const restMs = 140

/** What of a sheet is shown, and the sheet laid out for it. */
export function useSheetView(
  sheet: FaceSheet,
  models: readonly FaceModel[],
  seenFrom: SeenFrom,
): SheetViewState {
  const [view, act] = useReducer(
    (before: SheetView, one: ViewAct) => changeView(before, one, sheet.list),
    wholeSheet,
  )
  const [rested, setRested] = useState(1)
  useEffect(() => {
    const timer = setTimeout(() => setRested(view.zoom), restMs)
    return () => clearTimeout(timer)
  }, [view.zoom])
  const list = useMemo(
    () => (rested === 1 ? sheet.list : relaidSheet(sheet, models, rested, seenFrom)),
    [sheet, models, rested, seenFrom],
  )
  return { view, act, list }
}

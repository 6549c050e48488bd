import type { Box, Xy } from './types'

/** What of a sheet is shown: how many times larger than whole, and the top left corner of the window, sheet mm. */
export interface SheetView {
  readonly zoom: number
  readonly left: number
  readonly top: number
}

/** The sheet that is looked at, mm. The window has its proportions. */
export interface Sheet {
  readonly widthMm: number
  readonly heightMm: number
}

export type ViewAct =
  /** `by` 2 shows everything twice as large; the point `about` stays where it is. */
  | { readonly kind: 'zoom'; readonly by: number; readonly about: Xy }
  /** Moves the window over the sheet, sheet mm. */
  | { readonly kind: 'pan'; readonly byMm: Xy }
  | { readonly kind: 'whole' }
  /** Fits a part of the sheet, with a tenth of air round it. */
  | { readonly kind: 'show'; readonly box: Box }
  /** Moves the window just far enough that a point lies in it, off its rim. */
  | { readonly kind: 'follow'; readonly point: Xy }

export const wholeSheet: SheetView = { zoom: 1, left: 0, top: 0 }

/** A window narrower than this shows nothing that a mould has, mm. */
const leastWindowMm = 20
const rimShare = 0.06

/** How far a sheet can be zoomed in. At least 1. */
export function mostZoom({ widthMm }: Sheet): number {
  return Math.max(1, widthMm / leastWindowMm)
}

/** The part of the sheet that a view shows. */
export function windowOf(view: SheetView, { widthMm, heightMm }: Sheet): Box {
  return {
    left: view.left,
    top: view.top,
    right: view.left + widthMm / view.zoom,
    bottom: view.top + heightMm / view.zoom,
  }
}

/**
 * The view after an act, never beyond the sheet's edges nor its zoom. RangeError for a zoom that is not above 0, a
 * point that is no point, or a sheet without extent.
 */
export function changeView(view: SheetView, act: ViewAct, sheet: Sheet): SheetView {
  if (!(sheet.widthMm > 0 && sheet.heightMm > 0)) {
    throw new RangeError(`a view needs a sheet with an extent, got ${sheet.widthMm} x ${sheet.heightMm} mm`)
  }
  switch (act.kind) {
    case 'whole':
      return wholeSheet
    case 'zoom':
      return zoomed(view, act.by, act.about, sheet)
    case 'pan':
      return clamped({ ...view, left: view.left + act.byMm[0], top: view.top + act.byMm[1] }, sheet)
    case 'show':
      return shown(act.box, sheet)
    case 'follow':
      return followed(view, act.point, sheet)
  }
}

function zoomed(view: SheetView, by: number, about: Xy, sheet: Sheet): SheetView {
  if (!(by > 0 && Number.isFinite(by))) throw new RangeError(`a zoom must be above 0, got ${by}`)
  const zoom = Math.min(mostZoom(sheet), Math.max(1, view.zoom * by))
  const share = view.zoom / zoom
  return clamped(
    {
      zoom,
      left: about[0] - (about[0] - view.left) * share,
      top: about[1] - (about[1] - view.top) * share,
    },
    sheet,
  )
}

function shown(box: Box, sheet: Sheet): SheetView {
  const width = Math.max(box.right - box.left, leastWindowMm) * 1.2
  const height = Math.max(box.bottom - box.top, leastWindowMm) * 1.2
  const zoom = Math.min(
    mostZoom(sheet),
    Math.max(1, Math.min(sheet.widthMm / width, sheet.heightMm / height)),
  )
  return clamped(
    {
      zoom,
      left: (box.left + box.right) / 2 - sheet.widthMm / zoom / 2,
      top: (box.top + box.bottom) / 2 - sheet.heightMm / zoom / 2,
    },
    sheet,
  )
}

function followed(view: SheetView, [x, y]: Xy, sheet: Sheet): SheetView {
  const width = sheet.widthMm / view.zoom
  const height = sheet.heightMm / view.zoom
  const into = (from: number, length: number, at: number) =>
    Math.min(Math.max(from, at - length * (1 - rimShare)), at - length * rimShare)
  return clamped({ ...view, left: into(view.left, width, x), top: into(view.top, height, y) }, sheet)
}

function clamped({ zoom, left, top }: SheetView, { widthMm, heightMm }: Sheet): SheetView {
  if (!(Number.isFinite(left) && Number.isFinite(top))) {
    throw new RangeError(`a window can't stand at (${left}, ${top}) mm`)
  }
  const within = (at: number, most: number) => Math.min(Math.max(0, at), Math.max(0, most))
  return {
    zoom,
    left: within(left, widthMm - widthMm / zoom),
    top: within(top, heightMm - heightMm / zoom),
  }
}

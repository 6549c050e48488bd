'use client'
import type { ReactNode } from 'react'
import { mostZoom, type Sheet, type SheetView, type ViewAct, windowOf } from '#lib/core/drawing/index'
import styles from './drawing.module.css'

const step = 1.6

/** The window's acts as buttons with words; nothing needs a wheel or two fingers. */
export function ViewButtons({
  view,
  sheet,
  act,
  whole,
  children,
}: {
  readonly view: SheetView
  readonly sheet: Sheet
  readonly act: (act: ViewAct) => void
  /** What the whole is called: "Whole area", "All areas". */
  readonly whole: string
  readonly children?: ReactNode
}) {
  return (
    <div className={`${styles.tools} no-print`}>
      <button
        type="button"
        className="btn"
        aria-disabled={view.zoom >= mostZoom(sheet)}
        onClick={() => act(zoomBy(step, view, sheet))}
      >
        Zoom in
      </button>
      <button
        type="button"
        className="btn"
        aria-disabled={view.zoom <= 1}
        onClick={() => act(zoomBy(1 / step, view, sheet))}
      >
        Zoom out
      </button>
      <button
        type="button"
        className="btn"
        aria-disabled={view.zoom <= 1}
        onClick={() => act({ kind: 'whole' })}
      >
        {whole}
      </button>
      {children}
    </div>
  )
}

function zoomBy(by: number, view: SheetView, sheet: Sheet): ViewAct {
  const { left, top, right, bottom } = windowOf(view, sheet)
  return { kind: 'zoom', by, about: [(left + right) / 2, (top + bottom) / 2] }
}

const panShare = 0.12

/** What a key does to the window: + and - zoom, 0 shows all, arrows move it once it is zoomed in. Null: not its key. */
export function keyAct(key: string, view: SheetView, sheet: Sheet): ViewAct | null {
  if (key === '+' || key === '=') return zoomBy(step, view, sheet)
  if (key === '-' || key === '_') return zoomBy(1 / step, view, sheet)
  if (key === '0') return { kind: 'whole' }
  const [across, down] = arrows[key] ?? [0, 0]
  if (view.zoom <= 1 || (across === 0 && down === 0)) return null
  const share = panShare / view.zoom
  return { kind: 'pan', byMm: [across * sheet.widthMm * share, down * sheet.heightMm * share] }
}

/** Right and down, as a drawing runs. */
export const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

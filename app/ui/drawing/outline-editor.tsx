'use client'
import { useEffect, useEffectEvent, useId, useMemo, useReducer, useRef, useState } from 'react'
import {
  editOutline,
  type FaceModel,
  faceSheet,
  padSheet,
  pxPerPaperMm,
  startOutline,
  toDrawing,
  type Xy,
} from '#lib/core/drawing/index'
import { outlineMeasures, type Point, type SnapTargets } from '#lib/core/geometry/index'
import { figure } from '#lib/core/units'
import { CornerList } from './corner-list'
import styles from './drawing.module.css'
import { DrawnMeasures } from './drawn-measures'
import { type DrawnMark, DrawnOutlineOver } from './drawn-outline'
import { FaceCanvas } from './face-canvas'
import { facePlaceWords } from './face-place'
import { OutlineButtons } from './outline-buttons'
import { useOutlineKeys } from './use-outline-keys'
import { useOutlineTool } from './use-outline-tool'
import { useSheetView } from './use-sheet-view'
import { useWidth } from './use-width'
import { ViewButtons } from './view-buttons'

/** A face that an opening is drawn on. */
export interface DrawnOn {
  readonly model: FaceModel
  readonly targets: SnapTargets
  readonly edgeMarginMm: number
}

const leastPx = 260
const mostPx = 620
/** How near the pointer must come to be caught, px. */
const snapPx = 10
/**
 * An outline drawn on a face: by pointer with snapping, by keyboard alone with a cursor, and by figures in the list below. Every
 * change is told by `changed`, with no points while the outline is open.
 */
export function OutlineEditor({
  face,
  start,
  changed,
}: {
  readonly face: DrawnOn
  /** The points that the form holds. */
  readonly start: readonly Point[]
  readonly changed: (points: readonly Point[]) => void
}) {
  const room = useRef<HTMLDivElement>(null)
  const width = useWidth(room)
  return (
    <div ref={room} className={styles.editor}>
      {width === null ? null : <Editor {...{ face, start, changed, width }} />}
    </div>
  )
}

function Editor({
  face: { model, targets, edgeMarginMm },
  start,
  changed,
  width,
}: {
  readonly face: DrawnOn
  readonly start: readonly Point[]
  readonly changed: (points: readonly Point[]) => void
  readonly width: number
}) {
  const id = useId()
  const models = useMemo(() => [model], [model])
  const sheet = useMemo(() => {
    const made = faceSheet(models, { kind: 'screen', widthPx: width, maxHeightPx: mostPx })
    return padSheet(made, (leastPx / pxPerPaperMm) * made.list.denominator)
  }, [models, width])
  const state = useSheetView(sheet, models, 'cavity')
  const { view, act } = state
  const placement = sheet.faces[0]!.placement
  const place = (point: Point): Xy => toDrawing(placement, point)
  const [history, edit] = useReducer(editOutline, start, (points) => startOutline(points, true))
  const outline = history.now
  const [snapping, setSnapping] = useState(true)
  const [mark, setMark] = useState<DrawnMark | null>(null)
  const [at, setAt] = useState<Point | null>(null)
  const tool = useOutlineTool(outline, edit, placement, snapping ? targets : null)
  const mmPerPx = sheet.list.denominator / view.zoom / pxPerPaperMm
  const measures = useMemo(
    () => outlineMeasures(outline.points, outline.closed, model),
    [outline.points, outline.closed, model],
  )

  const tell = useEffectEvent(changed)
  const first = useRef(true)
  useEffect(() => {
    if (first.current) first.current = false
    else tell(outline.closed ? outline.points : [])
  }, [outline.points, outline.closed])

  const edgeWords = (to: Point): string => {
    const last = outline.points[outline.points.length - 1]
    if (!last || outline.closed) return ''
    const [du, dv] = [to[0] - last[0], to[1] - last[1]]
    return `${figure(Math.hypot(du, dv), 1)} mm at ${figure((Math.atan2(dv, du) * 180) / Math.PI, 1)}°`
  }
  const hover = (xy: Xy | null) => {
    if (xy === null) {
      setMark(null)
      return
    }
    const { at: to, snapped } = tool.caught(xy, snapPx * mmPerPx)
    setAt(to)
    setMark({
      at: place(to),
      words: outline.closed ? '' : [snapped?.words, edgeWords(to)].filter(Boolean).join(' · '),
      caught: snapped !== null,
    })
  }
  const keys = useOutlineKeys({ history, edit, model, sheet, targets, state, moved: setAt })
  const { cursor, said } = keys

  const where = at === null ? '' : facePlaceWords({ model, at })
  return (
    <>
      <OutlineButtons {...{ history, edit, snapping, setSnapping }} />
      <div
        role="application"
        aria-label={`Draw the opening on ${model.areaName}`}
        aria-describedby={`${id}-keys`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the cursor is moved with keys
        tabIndex={0}
        className={`${styles.focus} ${styles.drawRoom}`}
        onKeyDown={keys.press}
      >
        <FaceCanvas
          id={`${id}-face`}
          sheet={sheet}
          state={state}
          tool={tool}
          hover={hover}
          over={(perPx, window) => (
            <DrawnOutlineOver
              outline={outline}
              crossings={measures.crossings}
              mark={mark && outline.closed ? { ...mark, words: '', caught: false } : mark}
              cursor={cursor && place(cursor)}
              place={place}
              mmPerPx={perPx}
              window={window}
            />
          )}
        />
      </div>
      <p className={styles.readout}>{where || 'The place under the pointer is named here.'}</p>
      <p className="quiet" role="status">
        {[said, cursor && where].filter(Boolean).join(' ')}
      </p>
      <ViewButtons view={view} sheet={sheet.list} act={act} whole="Whole area" />
      <p className="note" id={`${id}-keys`}>
        Press on the face to set corners, on the first one to close. Drag a corner, or an edge by the ring in
        its middle. By keyboard: arrows move a cursor by 1 mm, with Shift by 10, with Alt by 0.1; Enter sets a
        corner, Backspace takes it back, S brings the cursor to what is near, C closes, Ctrl Z undoes.
      </p>
      <DrawnMeasures measures={measures} closed={outline.closed} model={model} edgeMarginMm={edgeMarginMm} />
      <CornerList outline={outline} edit={edit} />
    </>
  )
}

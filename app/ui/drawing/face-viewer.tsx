'use client'
import { useCallback, useMemo, useRef, useState } from 'react'
import {
  type FaceModel,
  type FaceSheet,
  faceSheet,
  padSheet,
  pxPerPaperMm,
  type SeenFrom,
  type Subject,
  windowOf,
} from '#lib/core/drawing/index'
import { DisplayList } from './display-list'
import styles from './drawing.module.css'
import { FaceCanvas } from './face-canvas'
import { type FacePlace, facePlace, facePlaceWords } from './face-place'
import { useSheetView } from './use-sheet-view'
import { useWidth } from './use-width'
import { keyAct, ViewButtons } from './view-buttons'
import './viewer.css'

export interface FaceViewerProps {
  readonly id: string
  /** The areas that are shown, each with all that is drawn on it. */
  readonly models: readonly FaceModel[]
  readonly seenFrom: SeenFrom
  /** Where patches and openings lead, by their name on the drawing. */
  readonly links: Readonly<Record<string, string>>
  /** Usual width of the room on a desk, px: for the drawing before any script has measured it. */
  readonly widthPx: number
}

const phonePx = 356
/** Wider than this a drawing is laid out for a desk: kept in a height that the eye takes in at once. */
const deskPx = 700
const deskHeight = { most: 560, least: 300 } as const
const fullHeight = { most: 760, least: 420 } as const
const phoneLeastPx = 220

function sheetFor(
  models: readonly FaceModel[],
  seenFrom: SeenFrom,
  widthPx: number,
  full: boolean,
): FaceSheet {
  const height = full ? fullHeight : deskHeight
  const desk = widthPx >= deskPx
  const several = models.length > 1 ? 1.5 : 1
  const sheet = faceSheet(
    models,
    { kind: 'screen', widthPx, maxHeightPx: desk ? height.most * several : null },
    seenFrom,
  )
  return padSheet(sheet, ((desk ? height.least : phoneLeastPx) / pxPerPaperMm) * sheet.list.denominator)
}

/**
 * Face drawings to look at closely: zoom, move, names of places under the pointer. The drawing stands there before any
 * script has loaded, laid out for a desk and for a phone; then it is laid out for the width that it has.
 */
export function FaceViewer({ id, models, seenFrom, links, widthPx }: FaceViewerProps) {
  const room = useRef<HTMLDivElement>(null)
  const [full, setFull] = useState(false)
  const width = useWidth(room)
  const hrefOf = useCallback(
    (subject: Subject) => (subject.kind === 'dowel' ? null : (links[subject.name] ?? null)),
    [links],
  )
  const all = models.length > 1 ? 'All areas' : 'Whole area'
  return (
    <div className={`face-viewer ${styles.viewer}`} data-full={full ? 'yes' : 'no'}>
      <div ref={room}>
        {width === null ? (
          <>
            <DisplayList
              id={`${id}-wide`}
              list={sheetFor(models, seenFrom, widthPx, false).list}
              className={styles.wide ?? ''}
              hrefOf={hrefOf}
            />
            <DisplayList
              id={`${id}-narrow`}
              list={sheetFor(models, seenFrom, phonePx, false).list}
              className={styles.narrow ?? ''}
              hrefOf={hrefOf}
            />
          </>
        ) : (
          <Measured
            key={`${seenFrom} ${models.map((model) => model.areaName).join('/')}`}
            {...{ id, models, seenFrom, hrefOf, width, full, all }}
            setFull={setFull}
          />
        )}
      </div>
    </div>
  )
}

function Measured({
  id,
  models,
  seenFrom,
  hrefOf,
  width,
  full,
  all,
  setFull,
}: {
  readonly id: string
  readonly models: readonly FaceModel[]
  readonly seenFrom: SeenFrom
  readonly hrefOf: (subject: Subject) => string | null
  readonly width: number
  readonly full: boolean
  readonly all: string
  readonly setFull: (full: boolean) => void
}) {
  const sheet = useMemo(() => sheetFor(models, seenFrom, width, full), [models, seenFrom, width, full])
  const state = useSheetView(sheet, models, seenFrom)
  const [place, setPlace] = useState<FacePlace | null>(null)
  const { view, act } = state
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: no element says "drawing" */}
      <div
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is moved with keys, as a map is
        tabIndex={0}
        className={styles.focus}
        aria-label={`${sheet.list.title}. Keys: plus and minus zoom, 0 shows all, arrows move it when it is zoomed in.`}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return
          const wanted = keyAct(event.key, view, sheet.list)
          if (wanted === null) return
          event.preventDefault()
          act(wanted)
          const { left, top, right, bottom } = windowOf(view, sheet.list)
          setPlace(facePlace(sheet, models, [(left + right) / 2, (top + bottom) / 2]))
        }}
      >
        <FaceCanvas
          id={id}
          sheet={sheet}
          state={state}
          hrefOf={hrefOf}
          hover={(at) => setPlace(at === null ? null : facePlace(sheet, models, at))}
        />
      </div>
      <div className={`${styles.below} no-print`}>
        <ViewButtons view={view} sheet={sheet.list} act={act} whole={all}>
          <button
            type="button"
            className={`btn ${styles.deskOnly}`}
            aria-pressed={full}
            onClick={() => setFull(!full)}
          >
            Full width
          </button>
        </ViewButtons>
        <p className={styles.readout}>
          {place ? (
            facePlaceWords(place)
          ) : (
            <>
              <span className={styles.forMouse}>
                Ctrl and the wheel zoom, dragging moves; the place under the pointer is named here
              </span>
              <span className={styles.forTouch}>Two fingers zoom; press a place to read where it is</span>
            </>
          )}
        </p>
        {state.list.omittedLabels.length > 0 ? (
          <p className="note">
            No room at this size for: {state.list.omittedLabels.join(', ')}. Zoom in for them.
          </p>
        ) : null}
      </div>
    </>
  )
}

'use client'
import {
  memo,
  type ReactNode,
  type PointerEvent as ReactPointerEvent,
  useEffect,
  useEffectEvent,
  useRef,
} from 'react'
import {
  type Box,
  edgeNames,
  type FaceSheet,
  primitives,
  type SheetView,
  type Subject,
  sizesAt,
  viewScale,
  windowOf,
  type Xy,
} from '#lib/core/drawing/index'
import { DisplayItems, descriptionOf } from './display-list'
import styles from './drawing.module.css'
import { pointerPoint } from './pointer-point'
import { SvgPrimitive } from './svg-primitive'
import type { SheetViewState } from './use-sheet-view'
import { useTouch } from './use-touch'

/** What a tool does with the pointer; points are in sheet mm. */
export interface CanvasTool {
  /** A pointer went down; true when the tool takes the drag that may follow. `reachMm` is how near counts as on it. */
  readonly grab: (at: Xy, reachMm: number) => boolean
  readonly drag: (at: Xy) => void
  readonly drop: () => void
  /** Pressed and let go in one place, without a drag. */
  readonly tap: (at: Xy, reachMm: number) => void
}

export interface FaceCanvasProps {
  readonly id: string
  readonly sheet: FaceSheet
  readonly state: SheetViewState
  readonly hrefOf?: (subject: Subject) => string | null
  readonly tool?: CanvasTool
  /** The pointer moved over the drawing without a button, or left it. */
  readonly hover?: (at: Xy | null) => void
  /** Drawn over the face, sheet mm; `mmPerPx` sizes what keeps its size on the screen. */
  readonly over?: (mmPerPx: number, window: Box) => ReactNode
}

const wheelStep = 0.0022
/** A pointer that moves less than this pressed a place and dragged nothing, px. */
const stillPx = 4
/** How near a pointer must come, px: a finger is wider than the point of a mouse. */
const reachPx = { mouse: 12, touch: 26 } as const

interface Press {
  readonly pointerId: number
  readonly from: readonly [number, number]
  readonly taken: boolean
  last: readonly [number, number]
  moved: boolean
}

const Items = memo(DisplayItems)

/**
 * A sheet of faces that can be zoomed and moved. Only the window changes with it; plain scrolling is left to the page: the
 * wheel zooms with Ctrl, one finger moves the drawing only when it is zoomed in.
 */
export function FaceCanvas({ id, sheet, state, hrefOf, tool, hover, over }: FaceCanvasProps) {
  const svg = useRef<SVGSVGElement>(null)
  const press = useRef<Press | null>(null)
  const dragged = useRef(false)
  const { view, act, list } = state
  const window = windowOf(view, sheet.list)
  const mmPerPx = sheet.list.denominator / view.zoom / (96 / 25.4)
  const linked =
    hrefOf !== undefined && list.items.some((item) => item.kind === 'group' && hrefOf(item.subject))

  const wheel = useEffectEvent((event: WheelEvent) => {
    if (!event.ctrlKey && !event.metaKey) return
    event.preventDefault()
    const about = pointerPoint(event.currentTarget as SVGSVGElement, event.clientX, event.clientY)
    const pixels = event.deltaMode === 1 ? event.deltaY * 16 : event.deltaY
    if (about) act({ kind: 'zoom', by: Math.exp(-pixels * wheelStep), about })
  })
  useEffect(() => {
    const drawing = svg.current
    if (!drawing) return
    // React listens to the wheel passively, and then the page zooms as well.
    const listen = (event: WheelEvent) => wheel(event)
    drawing.addEventListener('wheel', listen, { passive: false })
    return () => drawing.removeEventListener('wheel', listen)
  }, [])
  useTouch(svg, {
    begin: () => {
      if (press.current?.taken) tool?.drop()
      press.current = null
    },
    pinch: (by, about, byMm) => {
      act({ kind: 'zoom', by, about })
      act({ kind: 'pan', byMm })
    },
  })

  const at = (event: ReactPointerEvent<SVGSVGElement>) =>
    pointerPoint(event.currentTarget, event.clientX, event.clientY)
  const reachOf = (event: ReactPointerEvent) =>
    reachPx[event.pointerType === 'touch' ? 'touch' : 'mouse'] * mmPerPx

  return (
    <svg
      ref={svg}
      viewBox={[window.left, window.top, window.right - window.left, window.bottom - window.top]
        .map((mm) => Math.round(mm * 1000) / 1000)
        .join(' ')}
      role={linked ? 'group' : 'img'}
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-desc`}
      className={`${styles.drawing} ${styles.canvas} ${view.zoom > 1 ? styles.near : ''}`}
      onPointerDown={(event) => {
        if (event.button !== 0 || (event.pointerType === 'touch' && !event.isPrimary)) return
        const point = at(event)
        if (!point) return
        const taken = tool?.grab(point, reachOf(event)) ?? false
        press.current = {
          pointerId: event.pointerId,
          from: [event.clientX, event.clientY],
          last: [event.clientX, event.clientY],
          taken,
          moved: false,
        }
        dragged.current = false
        if (taken) event.currentTarget.setPointerCapture(event.pointerId)
      }}
      onPointerMove={(event) => {
        const now = press.current
        const point = at(event)
        if (!point) return
        if (!now || now.pointerId !== event.pointerId) {
          hover?.(point)
          return
        }
        const far = Math.hypot(event.clientX - now.from[0], event.clientY - now.from[1])
        if (far > stillPx && !now.moved) {
          now.moved = true
          event.currentTarget.setPointerCapture(event.pointerId)
        }
        if (!now.moved) return
        if (now.taken) tool?.drag(point)
        else if (view.zoom > 1) {
          const was = pointerPoint(event.currentTarget, ...now.last)
          if (was) act({ kind: 'pan', byMm: [was[0] - point[0], was[1] - point[1]] })
        }
        now.last = [event.clientX, event.clientY]
      }}
      onPointerUp={(event) => {
        const now = press.current
        if (!now || now.pointerId !== event.pointerId) return
        const point = at(event)
        if (now.taken) tool?.drop()
        if (!now.moved && point) {
          if (!now.taken) tool?.tap(point, reachOf(event))
          hover?.(point)
        }
        dragged.current = now.moved
        press.current = null
      }}
      onPointerCancel={() => {
        if (press.current?.taken) tool?.drop()
        press.current = null
      }}
      onPointerLeave={() => {
        if (!press.current) hover?.(null)
      }}
      onClickCapture={(event) => {
        // The click that ends a drag over a patch does not open the patch.
        if (dragged.current) event.preventDefault()
      }}
    >
      <title id={`${id}-title`}>{list.title}</title>
      <desc id={`${id}-desc`}>{descriptionOf(list)}</desc>
      <Items list={list} {...(linked ? { hrefOf } : {})} />
      {view.zoom > 1 ? <WindowNames sheet={sheet} view={view} /> : null}
      {over?.(mmPerPx, window)}
    </svg>
  )
}

/** What a window keeps of the frame that it cuts off: names of cells along its rim, and a scale bar. */
function WindowNames({ sheet, view }: { readonly sheet: FaceSheet; readonly view: SheetView }) {
  const window = windowOf(view, sheet.list)
  const sizes = sizesAt(sheet.list.denominator / view.zoom, 'screen')
  const shapes = primitives([
    ...sheet.faces.flatMap((face) => edgeNames(face, window, sizes)),
    viewScale(window, sizes),
  ])
  return (
    <g>
      {shapes.map((shape, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: they are made anew for every window
        <SvgPrimitive key={index} shape={shape} denominator={sizes.denominator} />
      ))}
    </g>
  )
}

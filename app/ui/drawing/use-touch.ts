'use client'
import { type RefObject, useEffect, useEffectEvent } from 'react'
import type { Xy } from '#lib/core/drawing/index'
import { pointerPoint } from './pointer-point'

export interface TouchMoves {
  /** Two fingers came apart or together, and moved. `by` is how many times farther apart they are. */
  readonly pinch: (by: number, about: Xy, byMm: Xy) => void
  /** A second finger came down: whatever one finger began is off. */
  readonly begin: () => void
}

interface Fingers {
  readonly middle: readonly [number, number]
  readonly apart: number
}

function fingersOf({ touches }: TouchEvent): Fingers | null {
  const [a, b] = [touches[0], touches[1]]
  if (!a || !b) return null
  return {
    middle: [(a.clientX + b.clientX) / 2, (a.clientY + b.clientY) / 2],
    apart: Math.max(1, Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY)),
  }
}

/**
 * Two fingers zoom and move a drawing; one finger is left to the page. Listened to by hand, since the page may only be kept from
 * scrolling by a listener that is not passive.
 */
export function useTouch(svg: RefObject<SVGSVGElement | null>, moves: TouchMoves): void {
  const pinch = useEffectEvent(moves.pinch)
  const begin = useEffectEvent(moves.begin)
  useEffect(() => {
    const drawing = svg.current
    if (!drawing) return
    let last: Fingers | null = null
    const start = (event: TouchEvent) => {
      last = fingersOf(event)
      if (last) {
        event.preventDefault()
        begin()
      }
    }
    const move = (event: TouchEvent) => {
      const now = fingersOf(event)
      if (!now || !last) return
      event.preventDefault()
      const was = pointerPoint(drawing, ...last.middle)
      const is = pointerPoint(drawing, ...now.middle)
      if (was && is) pinch(now.apart / last.apart, was, [was[0] - is[0], was[1] - is[1]])
      last = now
    }
    const end = (event: TouchEvent) => {
      last = fingersOf(event)
    }
    drawing.addEventListener('touchstart', start, { passive: false })
    drawing.addEventListener('touchmove', move, { passive: false })
    drawing.addEventListener('touchend', end)
    drawing.addEventListener('touchcancel', end)
    return () => {
      drawing.removeEventListener('touchstart', start)
      drawing.removeEventListener('touchmove', move)
      drawing.removeEventListener('touchend', end)
      drawing.removeEventListener('touchcancel', end)
    }
  }, [svg])
}

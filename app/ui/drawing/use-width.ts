'use client'
import { type RefObject, useEffect, useState } from 'react'

/** The inner width of an element in whole px; null before it is known, as on the server. */
export function useWidth(element: RefObject<HTMLElement | null>): number | null {
  const [width, setWidth] = useState<number | null>(null)
  useEffect(() => {
    const watched = element.current
    if (!watched) return
    const observer = new ResizeObserver(([entry]) => {
      const inner = Math.floor(entry?.contentRect.width ?? 0)
      if (inner > 0) setWidth(inner)
    })
    observer.observe(watched)
    return () => observer.disconnect()
  }, [element])
  return width
}

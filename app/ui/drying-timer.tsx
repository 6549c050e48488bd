'use client'
import { useEffect, useState } from 'react'

/** Counts down until the last coat may be laid on; without script it tells since when the coat dries. */
export function DryingTimer({
  coatAt,
  dryMin,
  coatAtWords,
}: {
  readonly coatAt: string
  readonly dryMin: number
  readonly coatAtWords: string
}) {
  const [left, setLeft] = useState<number | null>(null)
  useEffect(() => {
    const tick = () =>
      setLeft(Math.max(0, Math.round(dryMin * 60 - (Date.now() - Date.parse(coatAt)) / 1000)))
    tick()
    const timer = setInterval(tick, 1000)
    return () => clearInterval(timer)
  }, [coatAt, dryMin])
  const two = (value: number) => String(value).padStart(2, '0')
  return (
    <div className="timer" role="timer" aria-live="off">
      <span>
        The last coat dries
        <span className="note" style={{ display: 'block' }}>
          on at {coatAtWords}; the shop's rule: {dryMin} min
        </span>
      </span>
      <strong>
        {left === null ? '' : left === 0 ? 'dry' : `${two(Math.floor(left / 60))}:${two(left % 60)}`}
      </strong>
    </div>
  )
}

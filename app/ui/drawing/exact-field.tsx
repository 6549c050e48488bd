'use client'
import { useId, useState } from 'react'
import { figure, parseQuantity, type Quantity } from '#lib/core/units'
import styles from './drawing.module.css'

/**
 * A figure beside the drawing, typed as people write it ("12,5", "1/2 in"). Taken over when the field is left or Enter is
 * pressed; what can't be read stays with its reason. It has no name: what the form sends is the outline.
 */
export function ExactField({
  label,
  value,
  quantity,
  decimals,
  above = Number.NEGATIVE_INFINITY,
  take,
  focused,
}: {
  readonly label: string
  readonly value: number
  readonly quantity: Quantity
  readonly decimals: number
  /** Only figures above this can be. */
  readonly above?: number
  readonly take: (value: number) => void
  readonly focused?: () => void
}) {
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const shown = figure(value, decimals)
  const commit = () => {
    if (typed === null || typed.trim() === shown) {
      setTyped(null)
      setWrong(null)
      return
    }
    const read = parseQuantity(typed, quantity)
    const says = !read.ok
      ? read.verdict === 'blank'
        ? 'Give a figure; blank is not zero'
        : read.reason
      : read.value > above
        ? null
        : `Above ${above} it must be`
    setWrong(says)
    if (says !== null || !read.ok) return
    setTyped(null)
    take(read.value)
  }
  return (
    <span className={styles.exact}>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        aria-label={label}
        aria-invalid={wrong ? true : undefined}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        value={typed ?? shown}
        onFocus={focused}
        onChange={({ target }) => setTyped(target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') {
            event.preventDefault()
            commit()
          } else if (event.key === 'Escape') {
            setTyped(null)
            setWrong(null)
          }
        }}
      />
      {wrong ? (
        <span className={styles.exactWrong} id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      ) : null}
    </span>
  )
}

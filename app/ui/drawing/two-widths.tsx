import type { DisplayList as Drawing, Medium, Subject } from '#lib/core/drawing/index'
import { DisplayList } from './display-list'
import styles from './drawing.module.css'

export interface TwoWidthsProps {
  readonly id: string
  /** Makes the drawing for a medium: its labels and its grid are laid out for that size. */
  readonly draw: (medium: Medium) => Drawing
  /** Usual width of the container on a desk, px. */
  readonly widthPx: number
  /** The same on a tablet and on paper, px, where the desk's drawing shrunk to it could not be read. */
  readonly tabletWidthPx?: number
  /** The same on a phone, px; the drawing is then laid out a second time. */
  readonly phoneWidthPx?: number
  readonly maxHeightPx?: number
  readonly hrefOf?: (subject: Subject) => string | null
}

const usualPhonePx = 356

/**
 * A drawing for the desk and one for the phone; the style sheet shows the one that fits (below 761 px the phone's),
 * so text reads at its size in both without a script.
 */
export function TwoWidths({
  id,
  draw,
  widthPx,
  tabletWidthPx,
  phoneWidthPx,
  maxHeightPx,
  hrefOf,
}: TwoWidthsProps) {
  const links = hrefOf === undefined ? {} : { hrefOf }
  const wide = draw({ kind: 'screen', widthPx, maxHeightPx: maxHeightPx ?? null })
  const narrow = draw({ kind: 'screen', widthPx: phoneWidthPx ?? usualPhonePx, maxHeightPx: null })
  return (
    <>
      {tabletWidthPx === undefined ? null : (
        <DisplayList
          id={`${id}-tablet`}
          list={draw({ kind: 'screen', widthPx: tabletWidthPx, maxHeightPx: null })}
          className={styles.tablet ?? ''}
          {...links}
        />
      )}
      <DisplayList id={`${id}-wide`} list={wide} className={styles.wide ?? ''} {...links} />
      <DisplayList id={`${id}-narrow`} list={narrow} className={styles.narrow ?? ''} {...links} />
    </>
  )
}

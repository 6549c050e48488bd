import { type LegendKey, legendEntry, pxPerPaperMm } from '#lib/core/drawing/index'
import styles from './drawing.module.css'
import { SvgPrimitive } from './svg-primitive'

/** What the lines of a drawing mean, in one row that wraps. */
export function DrawingLegend({ keys }: { readonly keys: readonly LegendKey[] }) {
  return (
    <ul className={styles.legend}>
      {keys.map((key) => (
        <LegendItem key={key} entry={key} />
      ))}
    </ul>
  )
}

function LegendItem({ entry }: { entry: LegendKey }) {
  const { words, widthMm, heightMm, shapes } = legendEntry(entry)
  return (
    <li>
      <svg
        viewBox={`0 0 ${widthMm} ${heightMm}`}
        width={Math.round(widthMm * pxPerPaperMm)}
        height={Math.round(heightMm * pxPerPaperMm)}
        aria-hidden="true"
      >
        {shapes.map((shape, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the sample is drawn anew as a whole
          <SvgPrimitive key={index} shape={shape} denominator={1} />
        ))}
      </svg>
      {words}
    </li>
  )
}

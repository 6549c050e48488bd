import type { Route } from 'next'
import type { StockMatter } from '#lib/core/stores/matters'
import { Link } from './link'

const tone = { look: 'due', note: 'soft' } as const

/** Where a matter of the stores is seen to. */
function hrefOf(matter: StockMatter): Route {
  if (matter.lotId !== null) return `/stores/lots/${matter.lotId}` as Route
  return `/stores/${matter.subjectKind}s/${matter.subjectId}` as Route
}

/** Low, late and soon late stock, each line with what to do. Of a long list the first stand here, and how many more. */
export function StockLines({
  matters,
  most = 8,
}: {
  readonly matters: readonly StockMatter[]
  readonly most?: number
}) {
  if (matters.length === 0) return <p className="note">Nothing in the stores is low or late.</p>
  const more = matters.length - most
  return (
    <table className="lines">
      <tbody>
        {matters.slice(0, most).map((matter) => (
          <tr key={`${matter.code} ${matter.subjectId} ${matter.lotId ?? ''}`}>
            <td>
              <Link href={hrefOf(matter)}>
                {matter.subjectName}
                {matter.lot === null ? '' : `, lot ${matter.lot}`}
              </Link>
              : <span className={tone[matter.severity]}>{matter.text}</span>
              <span className="note"> {matter.cure}</span>
            </td>
          </tr>
        ))}
        {more > 0 ? (
          <tr>
            <td>
              <Link href={'/stores' as Route}>{more} more in Stores</Link>
            </td>
          </tr>
        ) : null}
      </tbody>
    </table>
  )
}

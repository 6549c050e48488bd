import type { Route } from 'next'
import { Link } from './link'

/** The way from one page of a long list to the next. */
export function Pages({
  what,
  page,
  pages,
  href,
}: {
  /** "the rack": what is on the pages. */
  readonly what: string
  readonly page: number
  readonly pages: number
  readonly href: (page: number) => Route
}) {
  if (pages <= 1) return null
  return (
    <nav className="acts" style={{ alignItems: 'center', marginTop: 14 }} aria-label={`Pages of ${what}`}>
      {page > 1 ? (
        <Link className="btn" href={href(page - 1)}>
          Page before
        </Link>
      ) : null}
      <span className="note">
        Page {page} of {pages}
      </span>
      {page < pages ? (
        <Link className="btn" href={href(page + 1)}>
          Next page
        </Link>
      ) : null}
    </nav>
  )
}

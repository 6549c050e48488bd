import { Link } from './link'

export function NoSuchPage() {
  return (
    <div className="empty">
      <p>
        <b>There is no such page.</b> A code may have been typed otherwise, or the link is old.
      </p>
      <p>
        <Link className="btn" href={'/moulds' as never}>
          To the rack
        </Link>
      </p>
    </div>
  )
}

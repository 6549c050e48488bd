import type { Route } from 'next'
import { Link } from '../../ui/link'

/** What a lead puts into empty stores first. */
export function FirstActs() {
  return (
    <p className="acts">
      <Link className="btn primary" href={'/stores/materials/new' as Route}>
        Add a material
      </Link>
      <Link className="btn" href={'/stores/products/new' as Route}>
        Add an agent or a resin
      </Link>
    </p>
  )
}

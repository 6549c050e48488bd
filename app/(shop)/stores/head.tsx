import type { Route } from 'next'
import type { ReactNode } from 'react'
import type { countStores } from '#lib/services/stores-lots'
import { Link } from '../../ui/link'

type Counts = Awaited<ReturnType<typeof countStores>>
type Place = 'lots' | 'materials' | 'products' | 'prices' | 'rates' | 'stacks'

const places: readonly { readonly place: Place; readonly href: string; readonly name: string }[] = [
  { place: 'lots', href: '/stores', name: 'Lots' },
  { place: 'materials', href: '/stores/materials', name: 'Materials' },
  { place: 'products', href: '/stores/products', name: 'Agents and resins' },
  { place: 'prices', href: '/stores/prices', name: 'Prices' },
  { place: 'rates', href: '/stores/rates', name: 'Rates' },
  { place: 'stacks', href: '/stores/stacks', name: 'Stacks' },
]

/** Head of the pages of Stores: where one is, how many of each there are, and the page's acts. */
export function StoresHead({
  counts,
  here,
  acts,
}: {
  readonly counts: Counts
  readonly here: Place
  readonly acts?: ReactNode
}) {
  return (
    <>
      <div className="crumb-row" style={{ marginBottom: 8 }}>
        <h1 style={{ marginRight: 'auto' }}>Stores</h1>
        <div className="acts">{acts}</div>
      </div>
      <nav className="stores-nav" aria-label="Parts of Stores">
        {places.map(({ place, href, name }) => (
          <Link key={place} href={href as Route} aria-current={place === here ? 'page' : undefined}>
            {name} <span className="note">{counts[place]}</span>
          </Link>
        ))}
      </nav>
    </>
  )
}

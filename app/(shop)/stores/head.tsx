import type { Route } from 'next'
import type { ReactNode } from 'react'
import type { TableName } from '#lib/exchange/tables/shop/index'
import type { countStores } from '#lib/services/stores-lots'
import { TableOut } from '../../ui/table-out'
import '../../ui/book-sheet.css'
import { Link } from '../../ui/link'

type Counts = Awaited<ReturnType<typeof countStores>>
type Place = 'lots' | 'materials' | 'products' | 'prices' | 'rates' | 'stacks'

const places: readonly {
  readonly place: Place
  readonly href: string
  readonly name: string
  readonly table: TableName
}[] = [
  { place: 'lots', href: '/stores', name: 'Lots', table: 'stock-lots' },
  { place: 'materials', href: '/stores/materials', name: 'Materials', table: 'materials' },
  { place: 'products', href: '/stores/products', name: 'Agents and resins', table: 'products' },
  { place: 'prices', href: '/stores/prices', name: 'Prices', table: 'prices' },
  { place: 'rates', href: '/stores/rates', name: 'Rates', table: 'rates' },
  { place: 'stacks', href: '/stores/stacks', name: 'Stacks', table: 'stacks' },
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
  const shown = places.find(({ place }) => place === here)
  return (
    <>
      <div className="crumb-row" style={{ marginBottom: 8 }}>
        <h1 style={{ marginRight: 'auto' }}>Stores</h1>
        {shown ? <TableOut name={shown.table} label={`${shown.name}, the whole table`} /> : null}
        <div className="acts">{acts}</div>
      </div>
      <nav className="stores-nav no-print" aria-label="Parts of Stores">
        {places.map(({ place, href, name }) => (
          <Link key={place} href={href as Route} aria-current={place === here ? 'page' : undefined}>
            {name} <span className="note">{counts[place]}</span>
          </Link>
        ))}
      </nav>
    </>
  )
}

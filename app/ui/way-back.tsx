'use client'
import type { Route } from 'next'
import { usePathname } from 'next/navigation'
import { Link } from './link'

const places: readonly { readonly begin: string; readonly name: string }[] = [
  { begin: '/patterns', name: 'To the patterns' },
  { begin: '/sets', name: 'To the split moulds' },
  { begin: '/parts', name: 'To the parts' },
  { begin: '/patches', name: 'To the patches' },
  { begin: '/stores', name: 'To the stores' },
  { begin: '/moulds', name: 'To the rack' },
  { begin: '/m/', name: 'To the rack' },
  { begin: '/pictures', name: 'To the rack' },
]

/** The way on from a page that isn't there, or isn't this person's: the list that its address lies under, else the Bench. */
export function WayBack() {
  const path = usePathname()
  const place = places.find(({ begin }) => path.startsWith(begin) && path !== begin)
  const href = place === undefined ? '/' : place.name === 'To the rack' ? '/moulds' : place.begin
  return (
    <p>
      <Link className="btn" href={href as Route}>
        {place?.name ?? 'To the Bench'}
      </Link>
    </p>
  )
}

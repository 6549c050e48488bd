'use client'
import type { Route } from 'next'
import { usePathname } from 'next/navigation'
import { Link } from './link'

const screens = [
  { href: '/', name: 'Bench' },
  { href: '/moulds', name: 'Moulds' },
  { href: '/patterns', name: 'Patterns' },
  { href: '/patches', name: 'Patches' },
  { href: '/stores', name: 'Stores' },
  { href: '/people', name: 'People' },
] as const

/** The screens of the book; People is the lead's. */
export function NavLinks({ lead }: { readonly lead: boolean }) {
  const path = usePathname()
  return (
    <nav aria-label="Screens">
      {screens
        .filter((screen) => lead || screen.href !== '/people')
        .map((screen) => {
          const here = screen.href === '/' ? path === '/' : path.startsWith(screen.href)
          return (
            <Link key={screen.href} href={screen.href as Route} aria-current={here ? 'page' : undefined}>
              {screen.name}
            </Link>
          )
        })}
    </nav>
  )
}

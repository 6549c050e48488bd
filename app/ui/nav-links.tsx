'use client'
import type { Route } from 'next'
import { usePathname } from 'next/navigation'
import { Link } from './link'

const screens = [
  { href: '/', name: 'Bench' },
  { href: '/moulds', name: 'Moulds', also: ['/m/', '/sets'] },
  { href: '/patterns', name: 'Patterns' },
  { href: '/parts', name: 'Parts' },
  { href: '/patches', name: 'Patches' },
  { href: '/stores', name: 'Stores' },
  { href: '/people', name: 'People' },
] as const satisfies readonly Screen[]

interface Screen {
  readonly href: string
  readonly name: string
  /** Begins of other addresses that belong to it. */
  readonly also?: readonly string[]
}

function isHere({ href, also = [] }: Screen, path: string): boolean {
  return href === '/' ? path === '/' : [href, ...also].some((begin) => path.startsWith(begin))
}

/** The screens of the book; People is the lead's. */
export function NavLinks({ lead }: { readonly lead: boolean }) {
  const path = usePathname()
  return (
    <nav aria-label="Screens">
      {screens
        .filter((screen) => lead || screen.href !== '/people')
        .map((screen) => {
          return (
            <Link
              key={screen.href}
              href={screen.href as Route}
              aria-current={isHere(screen, path) ? 'page' : undefined}
            >
              {screen.name}
            </Link>
          )
        })}
    </nav>
  )
}

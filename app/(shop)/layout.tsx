import type { Route } from 'next'
import type { ReactNode } from 'react'
import { signedIn } from '#lib/web/session'
import { signOut } from '../sign-in/actions'
import { HeadSearch } from '../ui/head-search'
import { Link } from '../ui/link'
import { NavLinks } from '../ui/nav-links'
import './head.css'
import '../ui/print.css'

export default async function ShopLayout({ children }: { readonly children: ReactNode }) {
  const actor = await signedIn()
  // Each page asks who is there, and knows where to come back to after the sign-in.
  if (!actor) return children
  return (
    <>
      <a className="skip" href="#main">
        To the content
      </a>
      <header className="head">
        <Link href={'/' as Route} className="mark">
          Mould<i>wright</i>
        </Link>
        <NavLinks lead={actor.role === 'lead'} />
        <HeadSearch lead={actor.role === 'lead'} />
        <details className="me">
          <summary>
            {actor.initials}
            <span className="quiet">
              : {actor.name}, {actor.role}
            </span>
          </summary>
          <div className="me-box">
            <p>
              {actor.name} <span className="soft">{actor.role}</span>
            </p>
            <Link href={'/settings' as Route}>Shop settings</Link>
            <Link href={'/out' as Route}>Tables as files</Link>
            <form action={signOut}>
              <button type="submit" className="btn">
                Sign out
              </button>
            </form>
          </div>
        </details>
      </header>
      <main id="main" className="page">
        {children}
      </main>
    </>
  )
}

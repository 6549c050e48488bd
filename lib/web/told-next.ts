import 'server-only'
import { cookies } from 'next/headers'

/** What the page after a plain form tells: how many pictures were kept, and what is to be said of each. */
export interface Told {
  readonly kept: number
  readonly lines: readonly string[]
}

const cookieName = 'mouldwright-told'
const keptForSeconds = 60
/** A cookie holds about 4000 signs. */
const mostSigns = 2400

/**
 * Leads the browser to a page of ours that tells this once. The words wait in a cookie and only the mark stands in
 * the address: nobody can put words on our page by a link.
 */
export function tellNext(request: Request, path: string, told: Told, mark: string): Response {
  const address = new URL(path, 'http://shop.invalid')
  address.searchParams.set('told', mark)
  const value = encodeURIComponent(JSON.stringify({ ...shortened(told), mark }))
  const secure = request.url.startsWith('https:') ? '; Secure' : ''
  return new Response(null, {
    status: 303,
    headers: {
      location: `${address.pathname}${address.search}${address.hash}`,
      'cache-control': 'no-store',
      'set-cookie': `${cookieName}=${value}; Path=/; Max-Age=${keptForSeconds}; HttpOnly; SameSite=Lax${secure}`,
    },
  })
}

function shortened({ kept, lines }: Told): Told {
  let room = mostSigns
  const fitting = lines.filter((line) => {
    room -= encodeURIComponent(line).length
    return room > 0
  })
  const left = lines.length - fitting.length
  return { kept, lines: left === 0 ? fitting : [...fitting, `and ${left} more`] }
}

/** What was left to be told on the page with this mark; null when there is nothing. */
export async function toldHere(mark: string | string[] | undefined): Promise<Told | null> {
  const value = (await cookies()).get(cookieName)?.value
  if (typeof mark !== 'string' || value === undefined) return null
  try {
    const told = JSON.parse(value.startsWith('{') ? value : decodeURIComponent(value)) as Told & {
      mark?: unknown
    }
    return told.mark === mark ? { kept: Number(told.kept), lines: told.lines.map(String) } : null
  } catch {
    return null
  }
}

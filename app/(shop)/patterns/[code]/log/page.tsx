import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { readPatternPage } from '#lib/services/patterns'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../ui/link'
import { LogKinds } from '../../../../ui/log/log-menu'
import { NotYours } from '../../../../ui/not-yours'

export async function generateMetadata({ params }: PageProps<'/patterns/[code]/log'>): Promise<Metadata> {
  return { title: `Write down, ${decodeURIComponent((await params).code)}` }
}

/** Everything that can be written down about a pattern. */
export default async function PatternLogKindsPage({ params }: PageProps<'/patterns/[code]/log'>) {
  const code = decodeURIComponent((await params).code)
  const actor = await requireActor(`/patterns/${encodeURIComponent(code)}/log`)
  const page = await found(readPatternPage(actor, { code }))
  if (!page) notFound()
  const base = `/patterns/${encodeURIComponent(page.pattern.code)}`
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={base as Route}>{page.pattern.code}</Link> / log
        </div>
      </div>
      <h1>Write down</h1>
      <p style={{ margin: '8px 0 22px' }}>{page.pattern.name}</p>
      {actor.role === 'viewer' ? (
        <NotYours>A viewer reads the book. A laminator or a lead writes into it.</NotYours>
      ) : (
        <LogKinds of="pattern" base={base} />
      )}
    </>
  )
}

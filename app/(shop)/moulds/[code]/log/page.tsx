import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { readMouldPage } from '#lib/services/moulds'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../ui/link'
import { LogKinds } from '../../../../ui/log/log-menu'
import { addressOf } from '../../../../ui/page-address'
import { Stamp } from '../../../../ui/stamp'

export async function generateMetadata({ params }: PageProps<'/moulds/[code]/log'>): Promise<Metadata> {
  return { title: `Write down, ${decodeURIComponent((await params).code)}` }
}

/** Everything that can be written down about a mould, by group, each with what it is for. */
export default async function LogKindsPage({ params, searchParams }: PageProps<'/moulds/[code]/log'>) {
  const code = decodeURIComponent((await params).code)
  const query = await searchParams
  const actor = await requireActor(addressOf(`/moulds/${encodeURIComponent(code)}/log`, query))
  const page = await found(readMouldPage(actor, { code }))
  if (!page) notFound()
  const base = `/moulds/${encodeURIComponent(page.mould.code)}`
  const from = query.from === 'm' ? 'm' : ''
  const backTo = from === 'm' ? `/m/${encodeURIComponent(page.mould.code)}` : base
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={backTo as Route}>{page.mould.code}</Link> / log
        </div>
      </div>
      <h1>Write down</h1>
      <p className="acts" style={{ margin: '8px 0 22px' }}>
        <span>{page.mould.name}</span>
        <Stamp state={page.standing.state} reason={page.standing.reason} />
      </p>
      {actor.role === 'viewer' ? (
        <p className="empty">A viewer reads the book. A laminator or a lead writes into it.</p>
      ) : (
        <LogKinds of="mould" base={base} from={from} />
      )}
    </>
  )
}

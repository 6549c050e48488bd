import type { Metadata, Route } from 'next'
import { listMatters } from '#lib/services/open-matters'
import { requireActor } from '#lib/web/session'
import { OpenMatters } from '../../ui/log/open-matters'
import { addressOf } from '../../ui/page-address'
import { Pages } from '../../ui/pages'
import { TableOut } from '../../ui/table-out'

export const metadata: Metadata = { title: 'Open matters' }

export default async function MattersPage({ searchParams }: PageProps<'/matters'>) {
  const actor = await requireActor(addressOf('/matters', await searchParams))
  const query = await searchParams
  const asked = Math.max(1, Math.trunc(Number(query.page)) || 1)
  const { matters, total, page, pages, today } = await listMatters(actor, { page: asked })
  return (
    <>
      <div className="crumb-row">
        <h1 style={{ marginRight: 'auto' }}>Open matters</h1>
        <TableOut name="open-matters" label="All open matters" />
      </div>
      {matters.length > 0 ? (
        <div className="one-column">
          <OpenMatters matters={matters} base={null} today={today} mayLog={actor.role !== 'viewer'} />
        </div>
      ) : (
        <div className="empty">
          <p>
            {total > 0
              ? 'There is no such page.'
              : 'Nothing is open. What somebody has to see to is opened on the page of its mould or pattern, and stands here with who, what and until when.'}
          </p>
        </div>
      )}
      <Pages
        what="open matters"
        page={page}
        pages={pages}
        href={(to) => (to === 1 ? '/matters' : `/matters?page=${to}`) as Route}
      />
    </>
  )
}

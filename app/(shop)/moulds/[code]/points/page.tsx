import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { shortDate } from '#lib/core/dates'
import { textOf } from '#lib/schema/form'
import { LocatingPointInput } from '#lib/schema/mould'
import { readMouldPage } from '#lib/services/moulds'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../ui/link'
import { NotYours } from '../../../../ui/not-yours'
import { PointsEditor } from '../../../../ui/points-editor'
import { HeadOut } from '../../../../ui/table-out'
import { saveIssue } from './actions'
import './points.css'

export const metadata: Metadata = { title: 'Locating points' }

export default async function PointsPage({ params }: PageProps<'/moulds/[code]/points'>) {
  const actor = await requireActor(`/moulds/${(await params).code}/points`)
  const code = decodeURIComponent((await params).code)
  const page = await found(readMouldPage(actor, { code }))
  if (!page) notFound()
  if (actor.role !== 'lead') return <NotYours>A lead issues locating points.</NotYours>
  const { mould, points, areas, context } = page
  const nameOf = (areaId: string | null) => areas.find((area) => area.id === areaId)?.name ?? ''
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={`/moulds/${encodeURIComponent(mould.code)}` as Route}>{mould.code}</Link> / locating
          points
        </div>
      </div>
      <HeadOut
        name="locating-points"
        of={{ mould: mould.code, issue: 'current' }}
        label={`Locating points of ${mould.code} in force`}
      >
        <h1>Locating points of {mould.code}</h1>
      </HeadOut>
      <p className="note" style={{ margin: '8px 0 18px' }}>
        {points
          ? `In force: issue ${points.number}, ${points.name}, ${shortDate(points.issuedOn, context.today)}, ${points.points.length} points. An issue is never edited; changes make the next one.`
          : 'No issue yet. The points come from the design model as a table; type or paste them.'}
      </p>
      {areas.length === 0 ? (
        <p className="empty">
          Points lie on a face area.{' '}
          <Link href={`/moulds/${encodeURIComponent(mould.code)}/areas/new` as Route}>Add an area first</Link>
        </p>
      ) : (
        <PointsEditor
          action={saveIssue}
          before={points}
          areas={areas.map((area) => area.name)}
          defaults={{
            id: randomUUID(),
            mouldId: mould.id,
            name: '',
            issuedOn: context.today,
            note: '',
            points: (points?.points ?? []).map((point) =>
              textOf(LocatingPointInput, {
                ...point,
                areaName: areas.length > 1 ? nameOf(point.areaId) : '',
              }),
            ),
          }}
        />
      )}
    </>
  )
}

import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { textOfPoints } from '#lib/schema/points-text'
import { faceModelOf } from '#lib/services/face-model'
import { type MouldPage, readMouldPage } from '#lib/services/moulds'
import { listStacks } from '#lib/services/stores'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../../../ui/action-form'
import { AreaFields } from '../../../../../ui/area-fields'
import { FaceViewer } from '../../../../../ui/drawing/face-viewer'
import { Hidden, TextArea, TextField } from '../../../../../ui/fields'
import { Link } from '../../../../../ui/link'
import { addressOf } from '../../../../../ui/page-address'
import { HeadOut } from '../../../../../ui/table-out'
import { ThicknessReadings } from '../../../../../ui/thickness-readings'
import { add, change, measure, strike } from '../actions'
import { axisName, axisNames } from '../sketch'
import '../../../mould-form.css'

type Area = MouldPage['areas'][number]

export const metadata: Metadata = { title: 'Face area' }

/** Open rows for lines and keep-outs beyond those that are there. */
const spareRows = 2
const spareNames = Array.from({ length: spareRows }, () => '')
const readingIds = 30

/** A face area to be changed, or a new one at .../areas/new. */
export default async function AreaPage({ params, searchParams }: PageProps<'/moulds/[code]/areas/[id]'>) {
  const actor = await requireActor(
    addressOf(`/moulds/${(await params).code}/areas/${(await params).id}`, await searchParams),
  )
  const { code, id } = await params
  const { measured } = await searchParams
  const page = await found(readMouldPage(actor, { code: decodeURIComponent(code) }))
  const area = id === 'new' ? null : page?.areas.find((candidate) => candidate.id === id)
  if (!page || area === undefined) notFound()
  const { mould, context } = page
  const stacks = (await listStacks(actor, {})).map((stack) => ({
    value: stack.id,
    label: `${stack.code}, ${stack.name}`,
  }))
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={`/moulds/${encodeURIComponent(mould.code)}` as Route}>{mould.code}</Link> /{' '}
          {area?.name ?? 'a new area'}
        </div>
      </div>
      <div style={{ marginBottom: 18 }}>
        {area ? (
          <HeadOut
            name="face-outlines"
            of={{ mould: mould.code }}
            label={`Outlines of ${mould.code}, all areas`}
            holds="outlines of all areas"
          >
            <h1>
              {mould.code}, {area.name}
            </h1>
          </HeadOut>
        ) : (
          <h1>Add an area to {mould.code}</h1>
        )}
      </div>
      <div className="mould-form area-form">
        {actor.role === 'lead' ? (
          <ActionForm
            action={area ? change : add}
            defaults={{ ...defaultsOf(area), mouldId: mould.id, code: mould.code }}
            submit={area ? 'Save' : 'Add the area'}
          >
            <Hidden name="id" />
            <Hidden name="mouldId" />
            <Hidden name="code" />
            {area ? <Hidden name="version" /> : null}
            <AreaFields
              axisNames={axisNames}
              stacks={stacks}
              lines={[...(area?.lines ?? []).map(({ name }) => name), ...spareNames]}
              keepOuts={[...(area?.keepOuts ?? []).map(({ name }) => name), ...spareNames]}
            />
          </ActionForm>
        ) : (
          <p className="empty">A lead draws areas.</p>
        )}
        {area ? (
          <div className="stack-gap">
            <FaceViewer
              id="area"
              models={[faceModelOf(mould.code, area, page.points, page.plans)]}
              seenFrom="cavity"
              links={{}}
              widthPx={560}
            />
            <section id="thickness" className="rule-top">
              <HeadOut
                name="thickness-readings"
                of={{ mould: mould.code }}
                label={`Thickness of ${mould.code}, all areas`}
                holds="all areas"
              >
                <h2>Thickness</h2>
              </HeadOut>
              {measured ? (
                <p className="notice done" role="status">
                  Written down.
                </p>
              ) : null}
              <ThicknessReadings
                area={area}
                code={mould.code}
                today={context.today}
                strike={actor.role === 'viewer' ? null : strike}
              />
              {actor.role === 'viewer' ? null : (
                <ActionForm
                  action={measure}
                  defaults={{
                    areaId: area.id,
                    code: mould.code,
                    measuredOn: context.today,
                    readings: '',
                    ids: Array.from({ length: readingIds }, () => randomUUID()).join(' '),
                  }}
                  submit="Write down"
                >
                  <Hidden name="areaId" />
                  <Hidden name="code" />
                  <Hidden name="ids" />
                  <TextArea
                    name="readings"
                    label="New readings"
                    rows={4}
                    hint="u; v; thickness in mm, a line for each place"
                  />
                  <TextField name="measuredOn" label="Measured on" type="date" />
                </ActionForm>
              )}
            </section>
          </div>
        ) : null}
      </div>
    </>
  )
}

function defaultsOf(area: Area | null): Record<string, unknown> {
  const blankLine = { name: '', kind: 'trim', inset: '', points: '', closed: '' }
  const blankKeep = { name: '', kind: 'flange', points: '' }
  const lines = [
    ...(area?.lines ?? []).map((line) => ({
      name: line.name,
      kind: line.kind,
      inset: '',
      points: textOfPoints(line.points),
      closed: String(line.closed),
    })),
    ...Array.from({ length: spareRows }, () => blankLine),
  ]
  const keeps = [
    ...(area?.keepOuts ?? []).map((keep) => ({
      name: keep.name,
      kind: keep.kind,
      points: textOfPoints(keep.outline),
    })),
    ...Array.from({ length: spareRows }, () => blankKeep),
  ]
  const rows = {
    ...Object.fromEntries(lines.map((line, index) => [`line${index}`, line])),
    ...Object.fromEntries(keeps.map((keep, index) => [`keep${index}`, keep])),
  }
  if (!area) {
    return {
      ...rows,
      id: randomUUID(),
      name: '',
      boundaryKind: 'rectangle',
      rectangleLength: '',
      rectangleWidth: '',
      boundaryText: '',
      boundaryUnit: '',
      originMm: { 0: '0', 1: '0', 2: '0' },
      uAxisText: '+x',
      vAxisText: '+y',
      gridCellMm: '50',
      gridU: '',
      gridV: '',
      stackId: '',
    }
  }
  return {
    ...rows,
    id: area.id,
    version: String(area.version),
    name: area.name,
    boundaryKind: 'points',
    rectangleLength: '',
    rectangleWidth: '',
    boundaryText: textOfPoints(area.boundary),
    boundaryUnit: '',
    originMm: Object.fromEntries(area.originMm.map((part, index) => [String(index), String(part)])),
    uAxisText: axisName(area.uAxis),
    vAxisText: axisName(area.vAxis),
    gridCellMm: String(area.gridCellMm),
    gridU: String(area.gridOriginMm[0]),
    gridV: String(area.gridOriginMm[1]),
    stackId: area.stackId ?? '',
  }
}

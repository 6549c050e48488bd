import type { Route } from 'next'
import { faceSheet, viewWords } from '#lib/core/drawing/index'
import { faceModelOf, readPointsBefore } from '#lib/services/face-model'
import type { MouldPage } from '#lib/services/moulds'
import { papers } from '#lib/services/sheets'
import { requireActor } from '#lib/web/session'
import { Link } from '../link'
import { FaceViewer } from './face-viewer'
import { DrawingLegend } from './legend'
import './mould-faces.css'

/** What of a mould's faces the address asks for. */
export interface FacesAsked {
  /** An area's id, "all", or nothing. */
  readonly area: string | null
  readonly fromBack: boolean
  readonly oldPlaces: boolean
}

/** ?area=…&view=back&old=no */
export function facesAsked(query: Readonly<Record<string, string | string[] | undefined>>): FacesAsked {
  return {
    area: typeof query.area === 'string' ? query.area : null,
    fromBack: query.view === 'back',
    oldPlaces: query.old !== 'no',
  }
}

/** A mould's face drawings: one area or all of them together, from the cavity or from the back, with old places or without. */
export async function MouldFaces({
  page,
  asked,
  base,
  lead,
}: {
  readonly page: MouldPage
  readonly asked: FacesAsked
  readonly base: string
  readonly lead: boolean
}) {
  const { areas, mould } = page
  if (areas.length === 0) return <NoArea base={base} lead={lead} />
  const actor = await requireActor()
  const before = page.points
    ? await readPointsBefore(actor, { mouldId: mould.id, number: page.points.number })
    : null
  const one =
    asked.area === 'all' && areas.length > 1
      ? null
      : (areas.find((area) => area.id === asked.area) ?? areaInWork(page) ?? areas[0] ?? null)
  const changes = { before, entries: page.entries }
  const all = (one ? [one] : areas).map((area) =>
    faceModelOf(mould.code, area, page.points, page.plans, changes),
  )
  const moved = all.some((model) => model.dowels.some((dowel) => dowel.oldPlace !== null))
  const models = asked.oldPlaces
    ? all
    : all.map((model) => ({
        ...model,
        dowels: model.dowels.map((dowel) => ({ ...dowel, oldPlace: null })),
      }))
  const seenFrom = asked.fromBack ? 'back' : 'cavity'
  const shown = { area: one?.id ?? 'all', fromBack: asked.fromBack, oldPlaces: asked.oldPlaces }
  const href = (change: Partial<typeof shown>) => `${base}?${addressOf({ ...shown, ...change })}` as Route
  const links = Object.fromEntries(
    page.patches.map((patch) => [`Patch ${patch.number}`, `/patches/${patch.id}`]),
  )
  const { legend } = faceSheet(models, { kind: 'screen', widthPx: 880, maxHeightPx: null }, seenFrom).list
  return (
    <>
      <div className="face-head">
        <span className="acts">
          {areas.length > 1 ? (
            <>
              {areas.map((area) => (
                <Choice
                  key={area.id}
                  href={href({ area: area.id })}
                  on={area.id === one?.id}
                  name={area.name}
                />
              ))}
              <Choice href={href({ area: 'all' })} on={one === null} name="all areas" />
            </>
          ) : (
            <b>{one?.name}</b>
          )}
        </span>
        <span className="acts no-print">
          {lead && one ? <Link href={`${base}/areas/${one.id}` as Route}>Change the area</Link> : null}
          {moved ? (
            <Link href={href({ oldPlaces: !asked.oldPlaces })} scroll={false}>
              {asked.oldPlaces ? 'Without old places' : 'With old places'}
            </Link>
          ) : null}
          <Link href={href({ fromBack: !asked.fromBack })} scroll={false}>
            {asked.fromBack ? 'See it from the cavity' : 'See it from the back'}
          </Link>
          <details className="menu">
            <summary>Print…</summary>
            <div className="menu-box">
              {papers.map(({ paper, name }) => (
                <a key={paper} href={`${base}/sheet?${addressOf(shown)}&paper=${paper}`}>
                  Mould sheet on {name}
                </a>
              ))}
            </div>
          </details>
        </span>
      </div>
      {asked.fromBack ? (
        <p className="face-view" role="note">
          {viewWords('back')[0]?.toUpperCase()}
          {viewWords('back').slice(1)}: what lies right here lies left in the cavity
        </p>
      ) : null}
      <div className="face-room">
        <FaceViewer
          id={`face-${shown.area}`}
          models={models}
          seenFrom={seenFrom}
          links={links}
          widthPx={880}
        />
      </div>
      <div className="legend-row">
        <DrawingLegend keys={legend} />
      </div>
    </>
  )
}

function NoArea({ base, lead }: { readonly base: string; readonly lead: boolean }) {
  return (
    <div className="empty" style={{ border: 0 }}>
      <p>
        No face area yet. With its outline the face is drawn here to scale, with dowels, patches and the
        location grid.
      </p>
      {lead ? (
        <p>
          <Link className="btn" href={`${base}/areas/new` as Route}>
            Add an area
          </Link>
        </p>
      ) : null}
    </div>
  )
}

function Choice({ href, on, name }: { readonly href: Route; readonly on: boolean; readonly name: string }) {
  return on ? (
    <b aria-current="true">{name}</b>
  ) : (
    <Link href={href} scroll={false}>
      {name}
    </Link>
  )
}

function addressOf({ area, fromBack, oldPlaces }: Required<FacesAsked>): string {
  return new URLSearchParams({
    ...(area === null ? {} : { area }),
    ...(fromBack ? { view: 'back' } : {}),
    ...(oldPlaces ? {} : { old: 'no' }),
  }).toString()
}

/** Where something is going on: an area with a patch that is planned, on the bench or not yet proved. */
function areaInWork(page: MouldPage): MouldPage['areas'][number] | undefined {
  const open = page.plans.filter(({ plan }) => plan.state !== 'proved' && plan.state !== 'put by')
  return page.areas.find((area) => open.some(({ patch }) => patch.areaId === area.id))
}

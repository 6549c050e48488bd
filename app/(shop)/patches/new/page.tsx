import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { snapTargets } from '#lib/core/geometry/index'
import { mouldLost } from '#lib/core/lineage/index'
import { edges, edgeWords, sides, sideWords } from '#lib/core/repair/index'
import { figure } from '#lib/core/units'
import { textOf } from '#lib/schema/form'
import { OpeningSource } from '#lib/schema/patch'
import { faceModelOf } from '#lib/services/face-model'
import { type MouldPage, readMouldPage } from '#lib/services/moulds'
import { readPatch } from '#lib/services/patches'
import { listRack } from '#lib/services/rack'
import { listMaterials } from '#lib/services/stores'
import { found } from '#lib/web/page'
import { requireActor, type SignedIn } from '#lib/web/session'
import { ActionForm } from '../../../ui/action-form'
import { CantBeMadeAgain } from '../../../ui/cant-be-made-again'
import { ChoiceField, Hidden, SelectField, TextArea, TextField } from '../../../ui/fields'
import { Link } from '../../../ui/link'
import { NotYours } from '../../../ui/not-yours'
import { addressOf } from '../../../ui/page-address'
import { Pages } from '../../../ui/pages'
import { type DrawnOnAreas, OpeningFields } from '../../../ui/patch-opening'
import { LivePreview } from '../../../ui/patch-preview'
import { rackAsked } from '../../moulds/rack-asked'
import { saveSketch } from './actions'
import { coverRows, drawnName } from './sketch'
import '../plan.css'
import './new.css'

type Patch = Awaited<ReturnType<typeof readPatch>>
type Query = Readonly<Record<string, string | string[] | undefined>>

export const metadata: Metadata = { title: 'Plan a patch' }

export default async function NewPatchPage({ searchParams }: PageProps<'/patches/new'>) {
  const actor = await requireActor(addressOf('/patches/new', await searchParams))
  const query = await searchParams
  const one = (value: string | string[] | undefined) => (typeof value === 'string' ? value : '')
  if (actor.role !== 'lead') return <NotYours>A lead plans patches. Everybody reads them.</NotYours>
  if (!one(query.mould)) return <ChooseMould actor={actor} query={query} />
  const page = await found(readMouldPage(actor, { code: one(query.mould) }))
  if (!page) notFound()
  const patch = one(query.patch) ? await found(readPatch(actor, { id: one(query.patch) })) : null
  const materials = await listMaterials(actor, {})
  const { mould, areas } = page
  const noStack = !mould.stackId && areas.every((area) => !area.stackId)
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={`/moulds/${encodeURIComponent(mould.code)}` as Route}>{mould.code}</Link> /{' '}
          {patch ? `Patch ${patch.number}, version ${(patch.plans[0]?.versionNo ?? 0) + 1}` : 'a new patch'}
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{patch ? `New version of Patch ${patch.number}` : 'Plan a patch'}</h1>
      <CantBeMadeAgain
        of={mouldLost(mould, mould.pattern)}
        act="Take a splash before anything is cut: what is cut away is gone."
      />
      {areas.length === 0 || noStack ? (
        <div className="empty">
          <p>
            {areas.length === 0
              ? `${mould.code} has no face area yet: an opening lies on one.`
              : `${mould.code} has no stack yet: every patch ply copies material and direction of the ply it replaces.`}
          </p>
          <p>
            <Link
              className="btn primary"
              href={
                `/moulds/${encodeURIComponent(mould.code)}/${areas.length === 0 ? 'areas/new' : 'edit'}` as Route
              }
            >
              {areas.length === 0 ? 'Add an area' : 'Give it a stack'}
            </Link>
          </p>
        </div>
      ) : (
        <div className="sketch">
          <ActionForm
            action={saveSketch}
            defaults={defaultsOf(page, patch, one(query.area), one(query.dowel))}
            submit="Save the sketch"
          >
            <Hidden name="id" />
            <Hidden name="patchId" />
            <Hidden name="mouldId" />
            <TextField name="title" label="What it is" hint="for example Opening round D02" />
            <TextArea name="reason" label="Why" rows={2} />
            {areas.length > 1 && !patch ? (
              <SelectField
                name="areaId"
                label="Area"
                options={areas.map((area) => ({ value: area.id, label: area.name }))}
              />
            ) : (
              <Hidden name="areaId" />
            )}
            <ChoiceField
              name="side"
              label="Worked from"
              options={sides.map((side) => ({
                value: side,
                label: `${sideWords[side].worked}, ${sideWords[side].from}`,
              }))}
              hint={
                <ul className="hint-list">
                  {sides.map((side) => (
                    <li key={side}>{sideWords[side].asked}</li>
                  ))}
                </ul>
              }
            />
            <ChoiceField
              name="edge"
              label="Edge"
              options={edges.map((edge) => ({ value: edge, label: edgeWords[edge].name }))}
            />
            <OpeningFields faces={facesOf(page, patch)} />
            <fieldset className="form">
              <legend>Taper</legend>
              <div className="field-row">
                <TextField
                  name="taper.ratio"
                  label="Ratio"
                  numeric
                  hint="length to thickness, 20 : 1 light, 50 : 1 for load"
                />
                <TextField
                  name="taper.mmPerPly"
                  label="The other rule, a ply"
                  numeric
                  unit="mm"
                  hint="for every ply; 12.7 is usual"
                />
                <SelectField
                  name="taper.use"
                  label="Built by"
                  options={[
                    { value: 'ratio', label: 'the ratio' },
                    { value: 'mm-per-ply', label: 'millimetres a ply' },
                    { value: 'longer', label: 'whichever is longer' },
                  ]}
                />
              </div>
            </fieldset>
            <TextField
              name="thickness"
              label="Measured thickness near the opening"
              numeric
              unit="mm, several places parted by ;"
              hint={storedReadings(page)}
            />
            <div className="field-row">
              <TextField
                name="pliesFromFace"
                label="Plies taken out"
                numeric
                hint="counted from the face, when worked from it; blank: all of them"
              />
              <TextField
                name="nextPartCureC"
                label="Hottest part cure to come"
                numeric
                unit="°C"
                hint={`blank: ${mould.partCureC ?? 'not known'}`}
              />
            </div>
            <fieldset className="form">
              <legend>Cover plies on the back</legend>
              {coverRows.map((index) => (
                <div className="field-row" key={index}>
                  <SelectField
                    name={`cover${index}`}
                    label={`Cover ply ${Number(index) + 1}`}
                    options={[
                      { value: '', label: 'none' },
                      ...materials.map((material) => ({ value: material.id, label: material.name })),
                    ]}
                  />
                  <TextField
                    name={`coverDirection${index}`}
                    label="Direction"
                    numeric
                    unit="°"
                    hint="from u towards v"
                  />
                </div>
              ))}
            </fieldset>
            <TextArea name="note" label="Note" rows={2} />
          </ActionForm>
          <LivePreview />
        </div>
      )}
    </>
  )
}

/** Moulds on one page of the choice. */
const choiceSize = 30

/** Moulds to choose from, found by words, a page at a time; retired ones take no patch. */
async function ChooseMould({ actor, query }: { readonly actor: SignedIn; readonly query: Query }) {
  const { find, page: asked } = rackAsked(query)
  const { rows, matching, total, page, pages } = await listRack(actor, {
    find,
    page: asked,
    size: choiceSize,
    notIn: ['retired'],
  })
  const href = (to: number) =>
    `/patches/new?${new URLSearchParams({ ...(find ? { find } : {}), page: String(to) })}` as Route
  return (
    <div className="narrow">
      <h1>Plan a patch</h1>
      <p className="note" style={{ margin: '6px 0 14px' }}>
        On which mould?
      </p>
      <form className="find-row" action="/patches/new">
        <label className="quiet" htmlFor="patch-mould">
          Code, name, part, pattern, place
        </label>
        <input
          id="patch-mould"
          type="search"
          name="find"
          defaultValue={find}
          placeholder="Code, name, part, place"
        />
        <button type="submit" className="btn">
          Find
        </button>
      </form>
      <p className="note" role="status" style={{ margin: '10px 0' }}>
        {matching} {matching === 1 ? 'mould' : 'moulds'}
        {find ? (
          <>
            {' · '}
            <Link href={'/patches/new' as Route}>show all</Link>
          </>
        ) : null}
      </p>
      {rows.length === 0 ? (
        <div className="empty">
          <p>
            {total === 0
              ? 'There is no mould yet; a patch is planned on the face of one.'
              : matching === 0
                ? 'No mould fits; a retired one takes no patch.'
                : 'There is no such page.'}
          </p>
          {total === 0 ? (
            <p className="acts">
              <Link className="btn primary" href={'/moulds/new' as Route}>
                Add the first mould
              </Link>
            </p>
          ) : null}
        </div>
      ) : (
        <table className="lines">
          <tbody>
            {rows.map((row) => (
              <tr key={row.mould.id}>
                <td>
                  <Link href={`/patches/new?mould=${encodeURIComponent(row.mould.code)}` as Route}>
                    {row.mould.code}
                  </Link>
                </td>
                <td>{row.mould.name}</td>
                <td>{row.standing.state}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <Pages what="the moulds" page={page} pages={pages} href={href} />
    </div>
  )
}

function storedReadings(page: MouldPage): string {
  const told = page.areas
    .filter((area) => area.readings.length > 0)
    .map(
      (area) => `${area.name}: ${area.readings.map((reading) => figure(reading.thicknessMm, 2)).join('; ')}`,
    )
  return told.length > 0
    ? `Blank: the readings of the area are taken (${told.join(' · ')})`
    : 'No reading is written down for any area'
}

/** What an opening is drawn on: each area with its points and patches, its own earlier versions left out. */
function facesOf(page: MouldPage, patch: Patch | null): DrawnOnAreas {
  const others = page.plans.filter((other) => other.patch.id !== patch?.id)
  const { edgeMarginMm } = page.context.shop.rules.repair
  const changes = { before: null, entries: page.entries }
  return Object.fromEntries(
    page.areas.map((area) => {
      const model = faceModelOf(page.mould.code, area, page.points, others, changes)
      return [area.id, { model, targets: snapTargets(model, edgeMarginMm), edgeMarginMm }]
    }),
  )
}

/** A new sketch starts bare but for the usual rules; a new version starts from the one before it. */
function defaultsOf(
  page: MouldPage,
  patch: Patch | null,
  areaId: string,
  dowelTag: string,
): Record<string, unknown> {
  const last = patch?.plans[0]
  const dowel = page.points?.points.find((point) => point.tag === dowelTag)
  const area =
    page.areas.find((candidate) => candidate.id === (patch?.areaId ?? dowel?.areaId ?? areaId)) ??
    page.areas[0]
  const placement = {
    shiftMm: dowel ? { 0: String(dowel.uMm), 1: String(dowel.vMm) } : { 0: '', 1: '' },
    turnDeg: '0',
    mirrored: 'false',
  }
  const opening = {
    kind: 'circle',
    diameterMm: '',
    lengthMm: '',
    widthMm: '',
    cornerRadiusMm: '',
    placement,
  }
  const common = {
    id: randomUUID(),
    patchId: patch?.id ?? randomUUID(),
    mouldId: page.mould.id,
    areaId: area?.id ?? '',
    outlineText: '',
    outlineUnit: '',
    thickness: '',
    pliesFromFace: '',
    nextPartCureC: '',
    note: '',
  }
  const blankCovers = Object.fromEntries(
    coverRows.flatMap((index) => [
      [`cover${index}`, ''],
      [`coverDirection${index}`, '0'],
    ]),
  )
  if (!patch || !last) {
    return {
      ...common,
      ...blankCovers,
      title: dowel ? `Opening round ${dowel.tag}` : '',
      reason: '',
      side: '',
      edge: 'scarf',
      opening,
      taper: { ratio: '20', mmPerPly: '12.7', use: 'ratio' },
    }
  }
  const written = textOf(OpeningSource, last.opening) as Record<string, unknown>
  return {
    ...common,
    ...blankCovers,
    title: patch.title,
    reason: patch.reason,
    side: last.input.side,
    edge: last.input.edge,
    opening: {
      ...opening,
      ...written,
      ...(last.opening.kind === 'outline' && last.opening.name === drawnName ? { kind: 'drawn' } : {}),
    },
    outlineText:
      last.opening.kind === 'outline' ? last.opening.points.map(([u, v]) => `${u}; ${v}`).join('\n') : '',
    outlineUnit: last.opening.kind === 'outline' ? 'mm' : '',
    taper: {
      ratio: String(last.input.taper.ratio),
      mmPerPly: String(last.input.taper.mmPerPly),
      use: last.input.taper.use,
    },
    pliesFromFace:
      last.input.removedPlies.length === last.input.stack.length
        ? ''
        : String(last.input.removedPlies.length),
    note: last.note,
  }
}

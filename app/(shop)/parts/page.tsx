import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { textOf } from '#lib/schema/form'
import { PartInput } from '#lib/schema/mould'
import { listBuiltParts } from '#lib/services/built-parts'
import { listPartRows } from '#lib/services/parts'
import { readSettings } from '#lib/services/shop'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../ui/action-form'
import { HeadOut, TableOut } from '../../ui/table-out'
import '../../ui/book-sheet.css'
import { BuiltPartTable } from '../../ui/built-part-table'
import { Hidden, TextArea, TextField } from '../../ui/fields'
import { Link } from '../../ui/link'
import { add, change } from './actions'

export const metadata: Metadata = { title: 'Parts' }

/** With how many of the latest the list opens. */
const fewParts = 30

const labels = { code: 'Code', name: 'Name', note: 'Note' }
const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

type PartRows = Awaited<ReturnType<typeof listPartRows>>

export default async function PartsPage({ searchParams }: PageProps<'/parts'>) {
  const query = await searchParams
  const actor = await requireActor('/parts')
  const text = (name: string) => {
    const value = query[name]
    return typeof value === 'string' && value.trim() !== '' ? value.trim().slice(0, 80) : undefined
  }
  const id = (name: string) => {
    const value = text(name)
    return value && uuid.test(value) ? value : undefined
  }
  const asked = { part: text('part'), mould: text('mould'), lot: id('lot'), since: id('since') }
  const narrowed = Object.values(asked).some((value) => value !== undefined)
  const find = text('find')
  const whole = narrowed || find !== undefined || query.all === 'yes'
  const [parts, built, { today }] = await Promise.all([
    listPartRows(actor, {}),
    listBuiltParts(actor, { ...asked, find }),
    readSettings(actor, {}),
  ])
  const lead = actor.role === 'lead'
  const edited = parts.find((part) => part.id === query.change)
  return (
    <>
      <div className="crumb-row">
        <h1 style={{ marginRight: 'auto' }}>Parts</h1>
        {narrowed ? null : <TableOut name="parts" label="All parts" />}
      </div>
      {narrowed ? null : <Kinds parts={parts} lead={lead} />}
      {lead && !narrowed ? (
        <PartForm edited={edited} open={edited !== undefined || parts.length === 0} />
      ) : null}
      <section id="built" style={{ marginTop: narrowed ? 0 : 30 }}>
        <HeadOut
          name="built-parts"
          label="All built parts"
          {...(narrowed || find ? { holds: 'all built parts' } : {})}
        >
          <h2>
            Built parts
            {built.told.length > 0 ? <>: {built.told.join('; ')}</> : null}
          </h2>
        </HeadOut>
        <form className="find-row no-print" style={{ margin: '10px 0 12px' }}>
          {Object.entries(asked).map(([name, value]) =>
            value === undefined ? null : <input key={name} type="hidden" name={name} value={value} />,
          )}
          <div className="field">
            <label htmlFor="find-serial">Serial</label>
            <input id="find-serial" type="search" name="find" defaultValue={find} />
          </div>
          <button type="submit" className="btn">
            Find
          </button>
          {narrowed || find ? (
            <Link className="btn plain" href={'/parts' as Route}>
              Show all parts
            </Link>
          ) : null}
        </form>
        {built.rows.length === 0 ? (
          <p className="empty">
            {narrowed || find
              ? 'No built part fits.'
              : 'No built part yet. A pull that names a serial puts the part here, with what it came off and what the moulds were then.'}
          </p>
        ) : (
          <>
            <p className="note">
              {built.total} {built.total === 1 ? 'part' : 'parts'}
              {whole && built.total > built.rows.length
                ? `; the latest ${built.rows.length} are shown, find the others by serial`
                : ''}
            </p>
            <BuiltPartTable rows={whole ? built.rows : built.rows.slice(0, fewParts)} today={today} />
            {!whole && built.rows.length > fewParts ? (
              <p className="no-print" style={{ marginTop: 12 }}>
                <Link className="btn" href={'/parts?all=yes#built' as Route}>
                  Show more of {built.total} parts
                </Link>
              </p>
            ) : null}
          </>
        )}
      </section>
    </>
  )
}

function PartForm({
  edited,
  open,
}: {
  readonly edited: PartRows[number] | undefined
  readonly open: boolean
}) {
  return (
    <details id="form" className="narrow no-print" style={{ marginTop: 16 }} open={open}>
      <summary>{edited ? `Change ${edited.code}` : 'Add a part'}</summary>
      <div style={{ marginTop: 12 }}>
        <ActionForm
          key={edited?.id ?? 'new'}
          action={edited ? change : add}
          labels={labels}
          defaults={
            edited
              ? { ...(textOf(PartInput, edited) as object), version: String(edited.version) }
              : { id: randomUUID(), code: '', name: '', note: '' }
          }
          submit={edited ? 'Save' : 'Add the part'}
        >
          <Hidden name="id" />
          {edited ? <Hidden name="version" /> : null}
          <div className="field-row">
            <TextField name="code" label={labels.code} hint="for example LH" />
            <TextField name="name" label={labels.name} />
          </div>
          <TextArea name="note" label={labels.note} rows={2} />
        </ActionForm>
      </div>
    </details>
  )
}

/** What the shop builds, and in which moulds. */
function Kinds({ parts, lead }: { readonly parts: PartRows; readonly lead: boolean }) {
  if (parts.length === 0) {
    return (
      <p className="empty">
        No part yet. What the shop builds stands here: hull, deck, spat; each with its moulds and the parts
        that came off them.
      </p>
    )
  }
  return (
    <div className="table-room">
      <table className="lines stacked">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Made in</th>
            <th scope="col" className="n">
              Built
            </th>
            <th scope="col">Note</th>
            {lead ? (
              <th scope="col">
                <span className="quiet">Change</span>
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <tr key={part.id}>
              <td>
                <b>{part.code}</b> {part.name}
              </td>
              <td data-label="Made in">
                {part.moulds.length + part.sets.length === 0 ? (
                  <span className="soft">no mould yet</span>
                ) : null}
                {part.sets.map((set) => (
                  <span key={set.code}>
                    <Link href={`/sets/${encodeURIComponent(set.code)}` as Route}>{set.code}</Link>
                    {part.moulds.length > 0 ? ': ' : ''}
                  </span>
                ))}
                {part.moulds.map((mould, index) => (
                  <span key={mould.code}>
                    {index > 0 ? ', ' : ''}
                    <Link href={`/moulds/${encodeURIComponent(mould.code)}` as Route}>{mould.code}</Link>
                  </span>
                ))}
              </td>
              <td data-label="Built" className="n beside">
                {part.built > 0 ? (
                  <Link href={`/parts?part=${encodeURIComponent(part.code)}` as Route}>{part.built}</Link>
                ) : (
                  <span className="soft">none</span>
                )}
              </td>
              <td className="soft">{part.note}</td>
              {lead ? (
                <td className="n beside">
                  <Link href={`/parts?change=${part.id}#form` as Route}>change</Link>
                </td>
              ) : null}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

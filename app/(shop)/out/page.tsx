import type { Metadata } from 'next'
import { listTables } from '#lib/services/tables-out'
import { requireActor } from '#lib/web/session'
import { TableOut } from '../../ui/table-out'
import './out.css'

export const metadata: Metadata = { title: 'Tables to take out' }

export default async function TablesPage({ searchParams }: PageProps<'/out'>) {
  const actor = await requireActor('/out')
  const query = await searchParams
  const mould = typeof query.mould === 'string' ? query.mould.trim() : ''
  const decimal = query.decimal === 'comma' ? 'comma' : 'point'
  const groups = await listTables(actor, {})
  return (
    <>
      <h1>Tables to take out</h1>
      <p className="note out-lead">
        Everything in the book, as files for other programs. XLSX opens in a spreadsheet as it is. CSV is
        plain text for any program: a text that a spreadsheet would run as a formula has an apostrophe in
        front, and a lot such as 12-03 may be read as a date. Not sure? Take XLSX.
      </p>
      <form action="/out" className="out-ask">
        <div className="field">
          <label htmlFor="out-mould">Only one mould</label>
          <input
            id="out-mould"
            type="text"
            name="mould"
            defaultValue={mould}
            placeholder="Code; empty: all"
          />
        </div>
        <div className="field">
          <label htmlFor="out-decimal">CSV for</label>
          <select id="out-decimal" name="decimal" defaultValue={decimal}>
            <option value="point">12.5, commas between cells</option>
            <option value="comma">12,5, semicolons between cells</option>
          </select>
        </div>
        <button type="submit" className="btn">
          Set
        </button>
        <p className="note">
          {decimal === 'comma'
            ? 'CSV as spreadsheets on the Continent read it.'
            : 'If a spreadsheet shows all cells in one column, take the CSV with semicolons, or XLSX.'}
        </p>
      </form>
      <div className="out-groups">
        {groups.map((group) => (
          <section key={group.title} className="rule-top">
            <h2>{group.title}</h2>
            <ul>
              {group.tables.map((table) => {
                const narrowed = mould !== '' && table.narrowedBy.includes('mould')
                return (
                  <li key={table.name}>
                    <div className="out-name">
                      <h3>
                        {table.title}
                        {narrowed ? <span className="soft"> of {mould}</span> : null}
                      </h3>
                      <TableOut
                        name={table.name}
                        label={table.title}
                        of={narrowed ? { mould } : {}}
                        decimal={decimal}
                      />
                    </div>
                    <p className="note">{table.about}</p>
                    <details>
                      <summary>{table.columns.length} columns</summary>
                      <p className="note">{table.columns.map((column) => column.title).join(' · ')}</p>
                    </details>
                  </li>
                )
              })}
            </ul>
          </section>
        ))}
      </div>
    </>
  )
}

import type { ReactNode } from 'react'
import type { TableName } from '#lib/exchange/tables/shop/index'
import './table-out.css'

interface TableOutProps {
  readonly name: TableName
  /** What the table is narrowed to: { mould: 'LH-P' }, { patch: id, v: '2' }, { issue: 'current' }. */
  readonly of?: Readonly<Record<string, string>>
  readonly decimal?: 'point' | 'comma'
  /** Said to those who don't see where the links stand. */
  readonly label: string
  /** What is in the table where that is more than what stands under the head: "all areas". */
  readonly holds?: string
}

/** A pair of links for the head of a table: the whole of it as CSV and as XLSX. */
export function TableOut({ name, of = {}, decimal = 'point', label, holds }: TableOutProps) {
  const href = (extension: 'csv' | 'xlsx') => {
    const comma = extension === 'csv' && decimal === 'comma' ? { decimal } : {}
    const query = new URLSearchParams({ ...of, ...comma }).toString()
    return `/out/${name}.${extension}${query && `?${query}`}`
  }
  return (
    <span className="table-out no-print">
      {holds ? <span className="note">{holds}</span> : null}
      <a href={href('csv')} aria-label={`${label} as CSV`}>
        CSV
      </a>
      <span aria-hidden="true">·</span>
      <a href={href('xlsx')} aria-label={`${label} as XLSX`}>
        XLSX
      </a>
    </span>
  )
}

/** The heading of a table or a list, with the way out of all that stands under it. */
export function HeadOut({ children, ...table }: TableOutProps & { readonly children: ReactNode }) {
  return (
    <div className="head-out">
      {children}
      <TableOut {...table} />
    </div>
  )
}

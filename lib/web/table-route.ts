import 'server-only'
import {
  attachment,
  csvChunks,
  type DecimalMark,
  mostSheetCells,
  type Row,
  tableFileName,
  xlsxBytes,
} from '#lib/exchange/tables/index'
import { shopTableNamed } from '#lib/exchange/tables/shop/index'
import { type OpenTable, openLeadTable, openTable } from '#lib/services/tables-out'
import { Refusal } from '#lib/store/errors'
import { logEvent } from './log'
import { pathText, problem, serve } from './route'

const xlsxType = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'
const asked = ['mould', 'patch', 'v', 'issue', 'decimal']

/** A table of the shop as "<name>.csv" (sent as it is read) or "<name>.xlsx"; the query says what it is narrowed to. */
export async function serveTable(request: Request, file: string): Promise<Response> {
  const [, name = '', extension] = /^([a-z-]+)\.(csv|xlsx)$/.exec(pathText(file)) ?? []
  const table = shopTableNamed(name)
  if (!table) return problem(404, 'No such table', 'Take one from the list at /out, as .csv or .xlsx')
  const query = new URL(request.url).searchParams
  return serve(
    request,
    table.forLead ? openLeadTable : openTable,
    () => requestOf(table.name, query),
    (opened) => (extension === 'xlsx' ? xlsx(opened) : csv(opened, decimalOf(query))),
  )
}

function requestOf(name: string, query: URLSearchParams): unknown {
  const stray = [...query.keys()].find((key) => !asked.includes(key))
  if (stray !== undefined) {
    const says = `A table takes ${asked.map((key) => `?${key}=`).join(', ')}, not ?${stray}=`
    throw new Refusal(says, { fields: { [stray]: says } })
  }
  decimalOf(query)
  const whole = (text: string | null) => (text === null || !/^\d+$/.test(text) ? text : Number(text))
  return {
    name,
    mould: query.get('mould'),
    patch: query.get('patch'),
    version: whole(query.get('v')),
    issue: whole(query.get('issue')),
  }
}

function decimalOf(query: URLSearchParams): DecimalMark {
  const decimal = query.get('decimal') ?? 'point'
  if (decimal === 'point' || decimal === 'comma') return decimal
  throw new Refusal('The decimal mark is "point" or "comma"', { fields: { decimal: 'point or comma' } })
}

function csv(opened: OpenTable, decimal: DecimalMark): Response {
  const { table, batches, shop } = opened
  const chunks = csvChunks(table, batches, { decimal, timeZone: shop.timeZone })
  return download(opened, 'csv', 'text/csv; charset=utf-8; header=present', byteStream(chunks, table.name))
}

async function xlsx(opened: OpenTable): Promise<Response> {
  const { table, shop } = opened
  const bytes = await xlsxBytes(table, await rowsForSheet(opened), { timeZone: shop.timeZone })
  return download(opened, 'xlsx', xlsxType, new Uint8Array(bytes))
}

/** All rows, or a refusal as soon as they are more than a worksheet is made of here. */
async function rowsForSheet({ table, batches }: OpenTable): Promise<Row[]> {
  const rows: Row[] = []
  let filled = 0
  for await (const batch of batches) {
    for (const row of batch) {
      for (const { key } of table.columns) if (row[key] !== null && row[key] !== '') filled += 1
    }
    if (filled > mostSheetCells) {
      const narrow = table.narrowedBy.includes('mould') ? ', or narrow it to one mould with ?mould=' : ''
      throw new Refusal(
        `The table ${table.name} is too long for XLSX (more than ${mostSheetCells} filled cells). Take it as CSV, which spreadsheets open as well${narrow}.`,
      )
    }
    rows.push(...batch)
  }
  return rows
}

function download(
  { named, shop, today }: OpenTable,
  extension: 'csv' | 'xlsx',
  type: string,
  body: BodyInit,
): Response {
  return new Response(body, {
    headers: {
      'content-type': type,
      'content-disposition': attachment(tableFileName([shop.name, ...named], today, extension)),
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    },
  })
}

/** Read only as fast as it is taken; what breaks on the way breaks the download off, so that no half table looks whole. */
function byteStream(chunks: AsyncGenerator<string>, table: string): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder()
  return new ReadableStream({
    async pull(controller) {
      try {
        const { done, value } = await chunks.next()
        if (done) controller.close()
        else controller.enqueue(encoder.encode(value))
      } catch (error) {
        logEvent('error', 'table broke off', { table, error: String(error) })
        controller.error(error)
      }
    },
    async cancel() {
      await chunks.return(undefined)
    },
  })
}

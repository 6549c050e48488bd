import { randomUUID } from 'node:crypto'
import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { shopTime } from '#lib/core/dates'
import { entryWords, handStates, kindNames, type LogEntry, type LogKind, logKinds } from '#lib/core/log/index'
import { textOf } from '#lib/schema/form'
import { logData } from '#lib/schema/log'
import { lastProducts } from '#lib/services/log'
import { type MouldPage, readMouldPage } from '#lib/services/moulds'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../../../ui/action-form'
import { Fold, Hidden, TextArea, TextField } from '../../../../../ui/fields'
import { Link } from '../../../../../ui/link'
import { LogFields } from '../../../../../ui/log-fields'
import { Matters } from '../../../../../ui/matters'
import { Stamp } from '../../../../../ui/stamp'
import { logEntry } from './actions'

export async function generateMetadata({
  params,
}: PageProps<'/moulds/[code]/log/[kind]'>): Promise<Metadata> {
  const { code, kind } = await params
  return { title: `${kindNames[kind as LogKind] ?? kind}, ${decodeURIComponent(code)}` }
}

/** Kinds that a person writes by hand. */
const writable = logKinds.filter((kind) => kind !== 'patch-laid' && kind !== 'proved')

/** Acts that touch the whole face, an area, or the spot of a patch. */
const placed: readonly LogKind[] = [
  'strip',
  'clean',
  'seal',
  'coat',
  'tape-test',
  'inspection',
  'damage',
  'note',
]

export default async function LogPage({ params, searchParams }: PageProps<'/moulds/[code]/log/[kind]'>) {
  const actor = await requireActor()
  const { code: rawCode, kind: rawKind } = await params
  const query = await searchParams
  const kind = writable.find((known) => known === rawKind)
  const page = await found(readMouldPage(actor, { code: decodeURIComponent(rawCode) }))
  if (!kind || !page) notFound()
  if (actor.role === 'viewer') {
    return <p className="empty">A viewer reads the book. A laminator or a lead writes into it.</p>
  }
  const { mould } = page
  const corrected = page.entries.find((entry) => entry.id === query.corrects) ?? null
  const striking = kind === 'correction'
  const from = query.from === 'm' ? 'm' : ''
  const backTo =
    from === 'm' ? `/m/${encodeURIComponent(mould.code)}` : `/moulds/${encodeURIComponent(mould.code)}`
  const products = await lastProducts(actor, {})
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={backTo as never}>{mould.code}</Link> / {kindNames[kind]}
        </div>
      </div>
      <h1>{title(kind, corrected)}</h1>
      <p className="acts" style={{ margin: '8px 0 18px' }}>
        <span>{mould.name}</span>
        <Stamp state={page.standing.state} reason={page.standing.reason} />
      </p>
      {corrected ? (
        <p className="notice look" style={{ marginBottom: 18 }}>
          {striking
            ? 'This entry stays readable and no longer counts: '
            : 'This puts right what was written: '}
          <b>{entryWords(corrected).what}</b> {entryWords(corrected).detail}
          {striking ? null : (
            <>
              {' '}
              <Link
                href={
                  `/moulds/${encodeURIComponent(mould.code)}/log/correction?corrects=${corrected.id}` as never
                }
              >
                It never happened: strike it out
              </Link>
            </>
          )}
        </p>
      ) : null}
      {striking && !corrected ? (
        <p className="empty">
          An entry is struck out from the history: open the <Link href={backTo as never}>mould</Link>, choose
          "put right" at the entry.
        </p>
      ) : (
        <>
          {kind === 'cleared' ? (
            <section style={{ marginBottom: 18 }}>
              <h2>Before the next lay-up</h2>
              <Matters code={mould.code} matters={page.matters} mayLog />
            </section>
          ) : null}
          <ActionForm
            action={logEntry}
            defaults={defaultsOf(kind, page, corrected, {
              where: whereOf(query, corrected),
              from,
              products,
              tag: typeof query.tag === 'string' ? query.tag : '',
            })}
            submit={submitOf(kind, page)}
          >
            <Hidden name="id" />
            <Hidden name="kind" />
            <Hidden name="mouldId" />
            <Hidden name="code" />
            <Hidden name="from" />
            <Hidden name="correctsId" />
            <Hidden name="sawVersion" />
            <LogFields
              kind={kind}
              lead={actor.role === 'lead'}
              stops={page.matters.filter((matter) => matter.severity === 'stop').length}
              states={handStates.filter((state) => state !== 'retired' || actor.role === 'lead')}
              places={placed.includes(kind) ? placesOf(page) : []}
              products={products.filter((product) => product.kind === kind).map((product) => product.product)}
              tags={page.points?.points.map((point) => point.tag) ?? []}
            />
            <Fold title="Another day or time, and a note" open={corrected !== null}>
              <div className="field-row">
                <TextField name="doneOn" label="Done on" type="date" />
                <TextField name="time" label="At" type="time" hint="blank: only the day is known" />
              </div>
              <TextArea name="note" label="Note" />
            </Fold>
          </ActionForm>
        </>
      )}
    </div>
  )
}

function title(kind: LogKind, corrected: LogEntry | null): string {
  if (kind === 'correction') return 'Strike an entry out'
  if (corrected) return `Put right: ${kindNames[kind].toLowerCase()}`
  const titles: Partial<Record<LogKind, string>> = {
    cleared: 'Clear to lay up',
    pull: 'Log a pull',
    state: 'Set the state',
  }
  return titles[kind] ?? kindNames[kind]
}

function submitOf(kind: LogKind, page: MouldPage): string {
  if (kind === 'cleared')
    return page.standing.state === 'proof pull only' ? 'Clear for a proof pull' : 'Clear to lay up'
  return kind === 'correction' ? 'Strike it out' : 'Write it down'
}

function placesOf(page: MouldPage) {
  return [
    { value: '', label: 'Whole face' },
    ...page.areas.map((area) => ({ value: `area:${area.id}`, label: area.name })),
    ...page.patches
      .filter((patch) => patch.state === 'laid' || patch.state === 'proved')
      .map((patch) => ({ value: `patch:${patch.id}`, label: `Patch ${patch.number}, ${patch.place}` })),
  ]
}

function whereOf(
  query: Readonly<Record<string, string | string[] | undefined>>,
  corrected: LogEntry | null,
): string {
  const area = corrected?.areaId ?? query.area
  const patch = corrected?.patchId ?? query.patch
  return typeof patch === 'string' ? `patch:${patch}` : typeof area === 'string' ? `area:${area}` : ''
}

function defaultsOf(
  kind: LogKind,
  page: MouldPage,
  corrected: LogEntry | null,
  given: {
    readonly where: string
    readonly from: string
    readonly tag: string
    readonly products: readonly {
      readonly kind: string
      readonly product: string
      readonly lot: string | null
    }[]
  },
): Record<string, unknown> {
  const { mould, context } = page
  const last = given.products.find((product) => product.kind === kind)
  const data =
    corrected?.kind === kind ? textOf(logData[kind], corrected.data) : freshData(kind, page, last, given.tag)
  return {
    id: randomUUID(),
    kind,
    mouldId: mould.id,
    code: mould.code,
    from: given.from,
    where: given.where,
    correctsId: corrected?.id ?? '',
    sawVersion: kind === 'moved' || kind === 'state' ? String(mould.version) : '',
    doneOn: corrected?.doneOn ?? context.today,
    time: corrected?.doneAt ? shopTime(corrected.doneAt, context.shop.timeZone) : '',
    note: corrected?.kind === kind ? corrected.note : '',
    data,
  }
}

/** What a form starts with: the usual case, so that the usual case takes two taps. */
function freshData(
  kind: LogKind,
  page: MouldPage,
  last: { readonly product: string; readonly lot: string | null } | undefined,
  tag: string,
): Record<string, string> {
  const leak = page.counts.lastLeak
  const starts: Partial<Record<LogKind, Record<string, string>>> = {
    pull: {
      went: 'usual',
      partFate: 'good',
      mouldFate: 'unharmed',
      serial: '',
      cureC: page.mould.partCureC === null ? '' : String(page.mould.partCureC),
    },
    strip: { product: last?.product ?? '' },
    clean: { product: last?.product ?? '' },
    seal: { product: last?.product ?? '', lot: last?.lot ?? '', coats: '2' },
    coat: { product: last?.product ?? '', lot: last?.lot ?? '', coats: '1', minutesBetween: '' },
    'tape-test': { result: 'slips' },
    'leak-check': {
      bagging: leak?.bagging ?? 'mould alone',
      heat: 'cold',
      pins: leak?.pins ?? 'out',
      temperatureC: '',
      volumeL: '',
      startMbar: '',
      endMbar: '',
      minutes: '10',
    },
    inspection: { verdict: 'sound', what: '' },
    damage: { weight: 'open matter', what: '', uMm: '', vMm: '' },
    'dowel-changed': { tag, what: 're-bushed', uMm: '', vMm: '', diameterMm: '' },
    moved: { place: '' },
    state: { state: 'held', on: 'true', reason: '' },
    cleared: { because: '', proof: '' },
  }
  return starts[kind] ?? {}
}

import { randomUUID } from 'node:crypto'
import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { isRisky, mouldLost } from '#lib/core/lineage/index'
import { handStates, kindNames, type LogEntry, type LogKind, logKinds } from '#lib/core/log/index'
import { findLogEntry, lastProducts, readHistory } from '#lib/services/log'
import { type PieceBefore, readSetPieces } from '#lib/services/log-set'
import { type MouldPage, readMouldPage } from '#lib/services/moulds'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { CantBeMadeAgain } from '../../../../../ui/cant-be-made-again'
import { Demoulding } from '../../../../../ui/demoulding'
import type { Option } from '../../../../../ui/fields'
import { Clocks, LastOfKind } from '../../../../../ui/log/log-asides'
import { startOf } from '../../../../../ui/log/log-defaults'
import { LogFormPage } from '../../../../../ui/log/log-page'
import { lotsFor } from '../../../../../ui/log/lots-for'
import { OpenMatters } from '../../../../../ui/log/open-matters'
import { LotUse } from '../../../../../ui/lot-use'
import { Matters } from '../../../../../ui/matters'
import { addressOf } from '../../../../../ui/page-address'
import { Release } from '../../../../../ui/release'
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
  'test-patch',
  'inspection',
  'damage',
  'repair',
  're-machined',
  'measured',
  'matter',
  'note',
]

/** Of these only areas are places: the spot of a patch has no frame of its own. */
const inAreas: readonly LogKind[] = ['measured']
const releaseKinds: readonly LogKind[] = ['strip', 'clean', 'seal', 'coat', 'tape-test', 'test-patch']
const clockKinds: readonly LogKind[] = ['pull', 'heat', 'pins', 'before-book', 'repair']

export default async function LogPage({ params, searchParams }: PageProps<'/moulds/[code]/log/[kind]'>) {
  const { code: rawCode, kind: rawKind } = await params
  const query = await searchParams
  const code = decodeURIComponent(rawCode)
  const actor = await requireActor(addressOf(`/moulds/${encodeURIComponent(code)}/log/${rawKind}`, query))
  const kind = writable.find((known) => known === rawKind)
  const page = await found(readMouldPage(actor, { code }))
  if (!kind || !page) notFound()
  if (actor.role === 'viewer') {
    return <p className="empty">A viewer reads the book. A laminator or a lead writes into it.</p>
  }
  const { mould, counts, context, standing, matters } = page
  const named = await findLogEntry(actor, { id: typeof query.corrects === 'string' ? query.corrects : null })
  const corrected = named?.mouldId === mould.id ? named : null
  const [products, last, pieces, lots] = await Promise.all([
    lastProducts(actor, {}),
    readHistory(actor, { mouldId: mould.id, kinds: [kind], limit: 6 }),
    mould.setId && (kind === 'pull' || kind === 'cleared') && !corrected
      ? readSetPieces(actor, { setId: mould.setId })
      : [],
    lotsFor(actor, kind, corrected),
  ])
  const base = `/moulds/${encodeURIComponent(mould.code)}`
  const from = query.whole === 'yes' && mould.set ? 'set' : query.from === 'm' ? 'm' : ''
  const backTo =
    from === 'm'
      ? `/m/${encodeURIComponent(mould.code)}`
      : from === 'set' && mould.set
        ? `/sets/${encodeURIComponent(mould.set.code)}`
        : base
  const ofKind = products.filter((product) => product.kind === (kind === 'test-patch' ? 'coat' : kind))
  const stopping = [...matters, ...pieces.flatMap((piece) => piece.matters)].filter(
    (matter) => matter.severity === 'stop',
  )
  return (
    <LogFormPage
      code={from === 'set' && mould.set ? mould.set.code : mould.code}
      name={from === 'set' && mould.set ? mould.set.name : mould.name}
      base={base}
      backTo={backTo}
      stamp={<Stamp state={standing.state} reason={standing.reason} />}
      corrected={corrected}
      action={logEntry}
      defaults={{
        ...startOf({
          kind,
          today: context.today,
          timeZone: context.shop.timeZone,
          corrected,
          asked: query,
          counts,
          partCureC: mould.partCureC,
          lastProduct: ofKind[0] ?? null,
          beginsOn: last.beginsOn,
        }),
        id: randomUUID(),
        kind,
        mouldId: mould.id,
        setId: pieces.length > 1 ? mould.setId : '',
        code: from === 'set' ? (mould.set?.code ?? '') : mould.code,
        from,
        sawVersion: kind === 'moved' || kind === 'state' ? String(mould.version) : '',
      }}
      submit={submitOf(kind, page)}
      fields={{
        kind,
        of: 'mould',
        lead: actor.role === 'lead',
        stops: stopping.length,
        states: handStates.filter((state) => state !== 'retired' || actor.role === 'lead'),
        places: placed.includes(kind) ? placesOf(page, kind) : [],
        products: ofKind.map((product) => product.product),
        tags: page.points?.points.map((point) => point.tag) ?? [],
        people: [...page.initials.keys()],
        matters: kind === 'settled' ? mattersToSettle(page, corrected) : [],
        pieces: pieces.map((piece) => piece.code),
      }}
      before={
        <>
          <CantBeMadeAgain
            of={isRisky(kind) ? mouldLost(mould, mould.pattern) : null}
            act="This act is final."
          />
          <Before kind={kind} page={page} pieces={pieces} />
        </>
      }
      lots={lots.length > 0 ? <LotUse lots={lots} rows={Math.max(1, corrected?.uses.length ?? 1)} /> : null}
      aside={
        <>
          {releaseKinds.includes(kind) ? (
            <section className="rule-top">
              <h2>Release</h2>
              <Release targets={counts.release} today={context.today} />
            </section>
          ) : null}
          {clockKinds.includes(kind) ? <Clocks counts={counts} /> : null}
          {kind === 'cleared' ? null : (
            <section className="rule-top">
              <h2>Before the next lay-up</h2>
              <Matters code={mould.code} matters={matters} mayLog />
            </section>
          )}
          {counts.openMatters.length > 0 && kind !== 'settled' ? (
            <section className="rule-top">
              <h2>Open matters</h2>
              <OpenMatters matters={counts.openMatters} base={base} today={context.today} mayLog />
            </section>
          ) : null}
          <LastOfKind
            entries={last.entries.filter((entry) => entry.id !== corrected?.id).slice(0, 5)}
            today={context.today}
            timeZone={context.shop.timeZone}
          />
        </>
      }
    />
  )
}

/** What must be read first: the gate of a lay-up, how the part comes out. */
function Before({
  kind,
  page,
  pieces,
}: {
  readonly kind: LogKind
  readonly page: MouldPage
  readonly pieces: readonly PieceBefore[]
}) {
  if (kind === 'pull') {
    const { demoulding, doNots } = page.mould
    return demoulding || doNots ? (
      <div style={{ marginBottom: 18 }}>
        <Demoulding notes={demoulding} doNots={doNots} />
      </div>
    ) : null
  }
  if (kind === 'settled' && page.counts.openMatters.length === 0) {
    return <p className="notice">Nothing is open on this mould.</p>
  }
  if (kind !== 'cleared') return null
  const shown =
    pieces.length > 1 ? pieces : [{ id: page.mould.id, code: page.mould.code, matters: page.matters }]
  return (
    <>
      {shown.map((piece) => (
        <section key={piece.id} className="rule-top" style={{ marginBottom: 18 }}>
          <h2>Before the next lay-up{shown.length > 1 ? ` of ${piece.code}` : ''}</h2>
          <Matters code={piece.code} matters={piece.matters} mayLog />
        </section>
      ))}
    </>
  )
}

function submitOf(kind: LogKind, page: MouldPage): string {
  if (kind === 'cleared')
    return page.standing.state === 'proof pull only' ? 'Clear for a proof pull' : 'Clear to lay up'
  return kind === 'correction' ? 'Strike it out' : 'Write it down'
}

function placesOf(page: MouldPage, kind: LogKind): Option[] {
  return [
    { value: '', label: 'Whole face' },
    ...page.areas.map((area) => ({ value: `area:${area.id}`, label: area.name })),
    ...(inAreas.includes(kind) ? [] : page.patches)
      .filter((patch) => patch.state === 'laid' || patch.state === 'proved')
      .map((patch) => ({ value: `patch:${patch.id}`, label: `Patch ${patch.number}, ${patch.place}` })),
  ]
}

/** The open matters; where a last word is put right, the matter that it is on as well, open or not. */
function mattersToSettle(page: MouldPage, corrected: LogEntry | null): Option[] {
  const open = page.counts.openMatters.map((matter) => ({ value: matter.entryId, label: matter.what }))
  if (corrected?.kind !== 'settled') return open
  const { entryId } = corrected.data
  return open.some((each) => each.value === entryId)
    ? open
    : [{ value: entryId, label: 'the matter that it settled' }, ...open]
}

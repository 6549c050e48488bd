import { randomUUID } from 'node:crypto'
import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { isRisky, patternLost } from '#lib/core/lineage/index'
import { kindNames, type LogKind, type PatternKind, patternKinds } from '#lib/core/log/index'
import { findLogEntry, lastProducts, readHistory } from '#lib/services/log'
import { openMatters } from '#lib/services/open-matters'
import { readPatternPage } from '#lib/services/patterns'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { CantBeMadeAgain } from '../../../../../ui/cant-be-made-again'
import { LastOfKind } from '../../../../../ui/log/log-asides'
import { startOf } from '../../../../../ui/log/log-defaults'
import { LogFormPage } from '../../../../../ui/log/log-page'
import { lotsFor } from '../../../../../ui/log/lots-for'
import { OpenMatters } from '../../../../../ui/log/open-matters'
import { LotUse } from '../../../../../ui/lot-use'
import { NotYours } from '../../../../../ui/not-yours'
import { addressOf } from '../../../../../ui/page-address'
import { logPatternEntry } from './actions'

export async function generateMetadata({
  params,
}: PageProps<'/patterns/[code]/log/[kind]'>): Promise<Metadata> {
  const { code, kind } = await params
  return { title: `${kindNames[kind as LogKind] ?? kind}, ${decodeURIComponent(code)}` }
}

const submits: Partial<Record<PatternKind, string>> = { correction: 'Strike it out' }

export default async function PatternLogPage({
  params,
  searchParams,
}: PageProps<'/patterns/[code]/log/[kind]'>) {
  const { code: rawCode, kind: rawKind } = await params
  const query = await searchParams
  const code = decodeURIComponent(rawCode)
  const actor = await requireActor(addressOf(`/patterns/${encodeURIComponent(code)}/log/${rawKind}`, query))
  const kind = patternKinds.find((known) => known === rawKind)
  const page = await found(readPatternPage(actor, { code }))
  if (!kind || !page) notFound()
  if (actor.role === 'viewer') {
    return <NotYours>A viewer reads the book. A laminator or a lead writes into it.</NotYours>
  }
  const { pattern, context } = page
  const named = await findLogEntry(actor, { id: typeof query.corrects === 'string' ? query.corrects : null })
  const corrected = named?.patternId === pattern.id ? named : null
  const [products, last, open, lots] = await Promise.all([
    lastProducts(actor, {}),
    readHistory(actor, { patternId: pattern.id, kinds: [kind], limit: 6 }),
    openMatters(actor, { patternId: pattern.id }),
    lotsFor(actor, kind, corrected),
  ])
  const base = `/patterns/${encodeURIComponent(pattern.code)}`
  const ofKind = products.filter((product) => product.kind === kind)
  const settled = corrected?.kind === 'settled' ? corrected.data.entryId : null
  return (
    <LogFormPage
      code={pattern.code}
      name={pattern.name}
      base={base}
      backTo={base}
      stamp={null}
      corrected={corrected}
      action={logPatternEntry}
      defaults={{
        ...startOf({
          kind,
          today: context.today,
          timeZone: context.shop.timeZone,
          corrected,
          asked: query,
          counts: null,
          partCureC: null,
          lastProduct: ofKind[0] ?? null,
          beginsOn: last.beginsOn,
        }),
        id: randomUUID(),
        kind,
        patternId: pattern.id,
        code: pattern.code,
        sawVersion: kind === 'moved' ? String(pattern.version) : '',
      }}
      submit={submits[kind] ?? 'Write it down'}
      fields={{
        kind,
        of: 'pattern',
        lead: actor.role === 'lead',
        stops: 0,
        states: [],
        places: [],
        products: ofKind.map((product) => product.product),
        tags: [],
        people: [...page.initials.keys()],
        matters: [
          ...(settled && !open.some((matter) => matter.entryId === settled)
            ? [{ value: settled, label: 'the matter that it settled' }]
            : []),
          ...open.map((matter) => ({ value: matter.entryId, label: matter.what })),
        ],
        pieces: [],
      }}
      before={
        <>
          <CantBeMadeAgain of={isRisky(kind) ? patternLost(pattern) : null} act="This act is final." />
          {kind === 'settled' && open.length === 0 ? (
            <p className="notice">Nothing is open on this pattern.</p>
          ) : null}
        </>
      }
      lots={lots.length > 0 ? <LotUse lots={lots} rows={Math.max(1, corrected?.uses.length ?? 1)} /> : null}
      aside={
        <>
          {open.length > 0 && kind !== 'settled' ? (
            <section className="rule-top">
              <h2>Open matters</h2>
              <OpenMatters matters={open} base={base} today={context.today} mayLog />
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

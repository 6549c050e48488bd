import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { shortDate } from '#lib/core/dates'
import { figure } from '#lib/core/units'
import { type BuiltPartPage, readBuiltPart } from '#lib/services/built-parts'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../../ui/action-form'
import '../../../../ui/book-sheet.css'
import { builtPartHref, fateWeight, fateWords } from '../../../../ui/built-part-table'
import { Hidden } from '../../../../ui/fields'
import { Link } from '../../../../ui/link'
import { PictureBlock } from '../../../../ui/pictures/picture-block'
import { PieceThenSection } from '../../../../ui/piece-then'
import { Stamp } from '../../../../ui/stamp'
import { remove } from '../../actions'

export async function generateMetadata({ params }: PageProps<'/parts/built/[serial]'>): Promise<Metadata> {
  return { title: `Part ${decodeURIComponent((await params).serial)}` }
}

/** A built part, and back from it: moulds, cure, lots, repairs, dowels as they were then. */
export default async function BuiltPartPageView({ params }: PageProps<'/parts/built/[serial]'>) {
  const serial = decodeURIComponent((await params).serial)
  const actor = await requireActor(`/parts/built/${encodeURIComponent(serial)}`)
  const page = await found(readBuiltPart(actor, { serial }))
  if (!page) notFound()
  const { part, pieces, context } = page
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/parts' as Route}>Parts</Link> /{' '}
          {part.partCode ? (
            <>
              <Link href={`/parts?part=${encodeURIComponent(part.partCode)}` as Route}>{part.partCode}</Link>{' '}
              /{' '}
            </>
          ) : null}
          {part.serial}
        </div>
        {actor.role === 'viewer' ? null : (
          <Link className="btn primary" href={`${builtPartHref(part.serial)}/edit` as Route}>
            Lots, cure, where it is
          </Link>
        )}
      </div>
      {pieces.length === 0 ? <NoPull page={page} lead={actor.role === 'lead'} /> : null}
      <div className="sheet">
        <div className="sheet-body">
          {pieces.length > 0 ? <Pulls page={page} /> : null}
          <Lots page={page} />
          {part.note ? (
            <section>
              <h2>Note</h2>
              <p className="prose">{part.note}</p>
            </section>
          ) : null}
        </div>
        <TitleStrip page={page} />
      </div>
      <p className="note" style={{ marginTop: 8 }}>
        A part that carries people or flight and road loads is judged and repaired by a licensed or
        responsible engineer; this sheet says how it was made.
      </p>
      {pieces.map((piece) => (
        <PieceThenSection key={piece.pull.id} piece={piece} today={context.today} />
      ))}
      <PictureBlock
        actor={actor}
        today={context.today}
        subject={{ on: 'part', onId: part.id, code: part.serial }}
      />
    </>
  )
}

/** What is left of a serial that was typed wrong and put right at its pull. */
function NoPull({ page: { part }, lead }: { readonly page: BuiltPartPage; readonly lead: boolean }) {
  const bare = part.lots.length === 0 && part.pictures === 0 && !part.cure && !part.whereNow && !part.note
  return (
    <div className="notice look" style={{ marginBottom: 16 }}>
      <p>
        <b>No pull names {part.serial}.</b> Its pull was put right or struck out: perhaps the serial was typed
        wrong.
      </p>
      {bare && lead ? (
        <div style={{ marginTop: 8 }}>
          <ActionForm action={remove} defaults={{ id: part.id }} submit="Take it out of the book">
            <Hidden name="id" />
          </ActionForm>
        </div>
      ) : (
        <p>
          {bare
            ? 'Nothing hangs on it: a lead can take it out of the book.'
            : 'What was written about it stands below; it can be taken out when nothing hangs on it any more.'}
        </p>
      )}
    </div>
  )
}

function Pulls({ page: { pieces, initials, context } }: { readonly page: BuiltPartPage }) {
  return (
    <section>
      <h2>Off these pieces</h2>
      <div className="table-room">
        <table className="lines stacked">
          <thead>
            <tr>
              <th scope="col">Mould</th>
              <th scope="col">Pulled</th>
              <th scope="col">By</th>
              <th scope="col">How it went</th>
              <th scope="col">Part</th>
              <th scope="col">Mould</th>
              <th scope="col" className="n">
                Pull no
              </th>
              <th scope="col" className="n">
                Cured at
              </th>
              <th scope="col">Note</th>
            </tr>
          </thead>
          <tbody>
            {pieces.map(({ pull, was }) => (
              <tr key={pull.id}>
                <td>
                  <Link href={`/moulds/${encodeURIComponent(pull.mouldCode)}` as Route}>
                    <b>{pull.mouldCode}</b>
                  </Link>
                </td>
                <td data-label="Pulled">{shortDate(pull.doneOn, context.today)}</td>
                <td data-label="By" title={pull.byName}>
                  {initials.get(pull.byName) ?? pull.byName}
                </td>
                <td data-label="How it went" className={pull.went === 'usual' ? undefined : 'due'}>
                  {pull.went}
                </td>
                <td data-label="Part" className={fateWeight[pull.partFate]}>
                  {fateWords[pull.partFate]}
                </td>
                <td data-label="Mould" className={pull.mouldFate === 'unharmed' ? undefined : 'due'}>
                  {pull.mouldFate}
                </td>
                <td data-label="Pull no" className="n">
                  {was?.pullNo ?? ''}
                </td>
                <td data-label="Cured at" className="n">
                  {pull.cureC === null ? (
                    <span className="soft">not written</span>
                  ) : (
                    `${figure(pull.cureC)} °C`
                  )}
                </td>
                <td>{pull.note}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )
}

function Lots({ page: { part } }: { readonly page: BuiltPartPage }) {
  return (
    <section>
      <h2>Laid from</h2>
      {part.lots.length === 0 ? (
        <p className="note">No lot written down yet.</p>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
            <tbody>
              {part.lots.map((row) => (
                <tr key={`${row.lotId} ${row.material} ${row.lot}`}>
                  <td>
                    <b>{row.material}</b>
                  </td>
                  <td data-label="Lot">
                    {row.lotId ? (
                      <Link href={`/stores/lots/${row.lotId}` as Route}>lot {row.lot}</Link>
                    ) : (
                      `lot ${row.lot}`
                    )}
                  </td>
                  <td className="n no-print">
                    {row.lotId ? (
                      <Link href={`/parts?lot=${row.lotId}` as Route}>every part from it</Link>
                    ) : (
                      <span className="soft">not in Stores</span>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  )
}

function TitleStrip({ page: { part, fate, context } }: { readonly page: BuiltPartPage }) {
  const day = part.pulls
    .map((pull) => pull.doneOn)
    .sort()
    .at(-1)
  return (
    <div className="strip">
      <div>
        <small>{part.partName ?? 'part not said'}</small>
        <h1>{part.serial}</h1>
      </div>
      <div>
        <small>Pulled</small>
        <b>{day ? shortDate(day, context.today) : 'no pull'}</b>
        <small>off {[...new Set(part.pulls.map((pull) => pull.mouldCode))].join(', ') || 'nothing'}</small>
      </div>
      <div style={{ flexGrow: 2 }}>
        <small>Cure</small>
        <b>{part.cure || 'not written'}</b>
      </div>
      <div>
        <small>Where it is now</small>
        <b>{part.whereNow || 'not said'}</b>
      </div>
      <div>
        <small>Version</small>
        <b>{part.version}</b>
        <small className="paper-only">printed {shortDate(context.today, context.today)}</small>
      </div>
      <div className="stamp-field">
        <Stamp state={fate ? fateWords[fate] : 'no pull names it'} />
      </div>
    </div>
  )
}

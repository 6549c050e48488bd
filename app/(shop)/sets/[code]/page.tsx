import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { shortDate } from '#lib/core/dates'
import { mouldLost } from '#lib/core/lineage/index'
import { massCheck } from '#lib/core/split-mould/index'
import { figure } from '#lib/core/units'
import { readSetPage, type SetPage } from '#lib/services/sets'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { HeadOut } from '../../../ui/table-out'
import '../../../ui/book-sheet.css'
import { CantBeMadeAgain } from '../../../ui/cant-be-made-again'
import { FigureLine } from '../../../ui/figure-line'
import { Link } from '../../../ui/link'
import { OpenMatters } from '../../../ui/log/open-matters'
import { Wrote } from '../../../ui/log/wrote'
import { Matters } from '../../../ui/matters'
import { massWords, sizeWords } from '../../../ui/outer-size'
import { PictureBlock } from '../../../ui/pictures/picture-block'
import { Strokes } from '../../../ui/pull-strip'
import { Stamp, weightOf } from '../../../ui/stamp'

export async function generateMetadata({ params }: PageProps<'/sets/[code]'>): Promise<Metadata> {
  return { title: decodeURIComponent((await params).code) }
}

export default async function SetPageView({ params, searchParams }: PageProps<'/sets/[code]'>) {
  const code = decodeURIComponent((await params).code)
  const actor = await requireActor(`/sets/${encodeURIComponent(code)}`)
  const page = await found(readSetPage(actor, { code }))
  if (!page) notFound()
  const { wrote } = await searchParams
  const { set, pieces } = page
  const mayLog = actor.role !== 'viewer'
  const lead = actor.role === 'lead'
  const first = pieces[0]
  const cleared = pieces.some(({ counts }) => counts.clearedOn !== null)
  const acts = [
    { kind: 'pull', words: 'Pull of the whole mould', main: cleared },
    { kind: 'cleared', words: 'Clear the whole mould', main: !cleared },
  ].sort((a, b) => Number(b.main) - Number(a.main))
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/sets' as Route}>Split moulds</Link> / {set.code}
        </div>
        <div className="acts">
          {mayLog && first
            ? acts.map(({ kind, words, main }) => (
                <Link
                  key={kind}
                  className={main ? 'btn primary' : 'btn'}
                  href={`/moulds/${encodeURIComponent(first.piece.code)}/log/${kind}?whole=yes` as Route}
                >
                  {words}
                </Link>
              ))
            : null}
          {lead ? (
            <Link className="btn" href={`/sets/${encodeURIComponent(set.code)}/edit` as Route}>
              Change the split mould
            </Link>
          ) : null}
        </div>
      </div>

      <Wrote actor={actor} id={wrote} />

      <div className="sheet">
        <div className="sheet-body">
          {pieces.map(({ piece }) => (
            <CantBeMadeAgain key={piece.id} of={mouldLost(piece, piece.pattern)} />
          ))}
          <PieceTable page={page} />
          {page.strokes.pulls.length > 0 ? (
            <section>
              <h2>
                Pull strip{' '}
                <span className="note" style={{ fontWeight: 400 }}>
                  each stroke is a part off all pieces, as it went on the piece where it went hardest
                </span>
              </h2>
              <Strokes id="set-strip" strokes={page.strokes} />
            </section>
          ) : null}
        </div>
        <TitleStrip page={page} />
      </div>

      <div className="two-sides">
        <div className="stack-gap">
          <Hardware page={page} lead={lead} />
          <Assembly page={page} />
        </div>
        <div className="stack-gap">
          <Whole page={page} />
          <BeforeLayUp page={page} mayLog={mayLog} />
          <Open page={page} mayLog={mayLog} />
        </div>
      </div>

      <PictureBlock
        actor={actor}
        today={page.context.today}
        subject={{ on: 'set', onId: set.id, code: set.code }}
      />
    </>
  )
}

function PieceTable({ page: { pieces, context } }: { readonly page: SetPage }) {
  return (
    <section>
      <h2>Pieces</h2>
      {pieces.length === 0 ? (
        <p className="note">No piece yet. A lead adds the moulds that make it up.</p>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
            <thead>
              <tr>
                <th scope="col">Piece</th>
                <th scope="col">State</th>
                <th scope="col">Place</th>
                <th scope="col" className="n">
                  Pulls
                </th>
                <th scope="col">Last pull</th>
                <th scope="col" className="n">
                  Mass
                </th>
                <th scope="col">Before the next lay-up</th>
              </tr>
            </thead>
            <tbody>
              {pieces.map(({ piece, counts, standing, matters }) => {
                const stops = matters.filter((matter) => matter.severity === 'stop').length
                const looks = matters.filter((matter) => matter.severity === 'look').length
                return (
                  <tr key={piece.id}>
                    <td>
                      {piece.pieceNo}{' '}
                      <Link href={`/moulds/${encodeURIComponent(piece.code)}` as Route}>
                        <b>{piece.code}</b>
                      </Link>{' '}
                      {piece.name}
                    </td>
                    <td data-label="State">
                      <b className={weightOf(standing.state)}>{standing.state}</b>{' '}
                      <span className="soft">{standing.reason}</span>
                    </td>
                    <td data-label="Place">{counts.place ?? <span className="soft">not known</span>}</td>
                    <td data-label="Pulls" className="n">
                      {counts.pulls}
                    </td>
                    <td data-label="Last pull">
                      {counts.lastPullOn
                        ? `${shortDate(counts.lastPullOn, context.today)}, ${counts.lastPullWent}`
                        : ''}
                    </td>
                    <td data-label="Mass" className="n">
                      {massWords(piece.massKg) ?? <span className="soft">not weighed</span>}
                    </td>
                    <td data-label="Before the next lay-up">
                      {stops > 0 ? (
                        <span className="held">
                          {stops} {stops === 1 ? 'stop' : 'stops'}
                        </span>
                      ) : null}
                      {stops > 0 && looks > 0 ? ', ' : null}
                      {looks > 0 ? <span className="due">{looks} to look at</span> : null}
                      {stops + looks === 0 ? <span className="soft">nothing open</span> : null}
                    </td>
                  </tr>
                )
              })}
            </tbody>
          </table>
        </div>
      )}
    </section>
  )
}

function TitleStrip({ page: { set, pieces, standing, strokes, context } }: { readonly page: SetPage }) {
  const seasonStart = context.season?.startsOn
  const thisSeason = strokes.pulls.filter((pull) => seasonStart && pull.day >= seasonStart).length
  return (
    <div className="strip">
      <div>
        <small>
          {set.code}, split mould of {pieces.length} {pieces.length === 1 ? 'piece' : 'pieces'}
        </small>
        <h1>{set.name}</h1>
      </div>
      <div>
        <small>Part</small>
        <b>
          {set.part ? (
            <Link href={`/parts?part=${encodeURIComponent(set.part.code)}` as Route}>
              {set.part.code}, {set.part.name}
            </Link>
          ) : (
            'not said'
          )}
        </b>
      </div>
      <div>
        <small>Parts off it</small>
        <b>{strokes.pulls.length}</b>
        <small>{thisSeason} this season</small>
      </div>
      <div>
        <small>Closed, with its blocks</small>
        <b>{massWords(set.massKg) ?? 'not weighed'}</b>
        <small>{sizeWords(set) ?? 'size not known'}</small>
      </div>
      <div>
        <small>Version</small>
        <b>{set.version}</b>
        <small className="paper-only">printed {shortDate(context.today, context.today)}</small>
      </div>
      <div className="stamp-field">
        {standing ? (
          <Stamp state={standing.state} reason={standing.reason} />
        ) : (
          <span className="soft">no piece yet</span>
        )}
      </div>
    </div>
  )
}

function Hardware({ page: { set }, lead }: { readonly page: SetPage; readonly lead: boolean }) {
  return (
    <section className="rule-top">
      <HeadOut name="hardware" label="Hardware of all split moulds" holds="all split moulds">
        <h2>Hardware list</h2>
      </HeadOut>
      {set.hardware.length === 0 ? (
        <p className="note">
          Nothing listed yet: flanges, pins, bolts, loose blocks, seals, lifting eyes, with count and size.
          {lead ? (
            <>
              {' '}
              <Link href={`/sets/${encodeURIComponent(set.code)}/edit` as Route}>Write the list</Link>
            </>
          ) : null}
        </p>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
            <thead>
              <tr>
                <th scope="col" className="n">
                  No
                </th>
                <th scope="col" className="n">
                  Count
                </th>
                <th scope="col">What</th>
                <th scope="col">Size</th>
                <th scope="col">Joins</th>
                <th scope="col">Kept</th>
              </tr>
            </thead>
            <tbody>
              {set.hardware.map((line, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a line has no other name than its place
                <tr key={index}>
                  <td className="n beside" data-label="No">
                    {index + 1}
                  </td>
                  <td className="n beside" data-label="Count">
                    {line.count}
                  </td>
                  <td>
                    <b>{line.name}</b> <span className="soft">{line.kind}</span>
                    {line.note ? <div className="note">{line.note}</div> : null}
                  </td>
                  <td data-label="Size">{line.size}</td>
                  <td data-label="Joins">{line.joins}</td>
                  <td data-label="Kept">{line.place}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  )
}

function Assembly({ page: { set, pieces } }: { readonly page: SetPage }) {
  return (
    <section className="rule-top">
      <h2>Closing and opening</h2>
      <p className="prose">
        {set.assembly || <span className="soft">Nobody has written down in which order it is closed.</span>}
      </p>
      {set.note ? <p className="prose">{set.note}</p> : null}
      {pieces.some(({ piece }) => piece.demoulding || piece.doNots) ? (
        <dl className="figures">
          {pieces.map(({ piece }) =>
            piece.demoulding || piece.doNots ? (
              <div key={piece.id}>
                <dt>
                  <b>{piece.code}</b> {piece.demoulding}
                  {piece.doNots ? <div className="held">{piece.doNots}</div> : null}
                </dt>
              </div>
            ) : null,
          )}
        </dl>
      ) : null}
    </section>
  )
}

function Whole({ page: { set, pieces } }: { readonly page: SetPage }) {
  const check = massCheck(
    set.massKg,
    pieces.map(({ piece }) => piece),
  )
  return (
    <section className="rule-top">
      <h2>As a whole</h2>
      <dl className="figures">
        <FigureLine
          name="Mass, closed"
          value={massWords(set.massKg)}
          note={check ? `pieces together ${figure(check.piecesKg, 1)} kg` : undefined}
        />
        <FigureLine name="Outer size" value={sizeWords(set)} />
      </dl>
      {check?.note ? <p className="note">{check.note}.</p> : null}
      <h3 style={{ marginTop: 12 }}>Lifting points</h3>
      <p className="prose">{set.liftingPoints || <span className="soft">not written</span>}</p>
      <h3 style={{ marginTop: 12 }}>Backing structure</h3>
      <p className="prose">{set.backing || <span className="soft">not written</span>}</p>
      <p className="note" style={{ marginTop: 10 }}>
        Lift only with gear that is rated for the whole mass, by people who are trained for it.
      </p>
    </section>
  )
}

function BeforeLayUp({ page: { pieces }, mayLog }: { readonly page: SetPage; readonly mayLog: boolean }) {
  return (
    <section className="rule-top">
      <h2>Before the next lay-up</h2>
      {pieces.map(({ piece, matters }) => (
        <div key={piece.id} style={{ marginTop: 10 }}>
          <h3>{piece.code}</h3>
          <Matters code={piece.code} matters={matters} mayLog={mayLog} />
        </div>
      ))}
    </section>
  )
}

function Open({ page: { pieces, context }, mayLog }: { readonly page: SetPage; readonly mayLog: boolean }) {
  const open = pieces.flatMap(({ piece, counts }) =>
    counts.openMatters.map((matter) => ({ ...matter, of: 'mould' as const, code: piece.code })),
  )
  return (
    <section className="rule-top">
      <h2>Open matters of its pieces</h2>
      {open.length === 0 ? (
        <p className="note">Nothing is open.</p>
      ) : (
        <OpenMatters matters={open} base={null} today={context.today} mayLog={mayLog} />
      )}
    </section>
  )
}

import type { Route } from 'next'
import { shortDate } from '#lib/core/dates'
import {
  entryWords,
  type LogEntry,
  leakLossMbar,
  type MouldThen,
  type RepairThen,
  releaseLines,
} from '#lib/core/log/index'
import { figure } from '#lib/core/units'
import type { PieceThen } from '#lib/services/built-parts'
import { entryHref } from './entry-href'
import { FigureLine } from './figure-line'
import { Link } from './link'
import './piece-then.css'

const sinceHref = (entryId: string) => `/parts?since=${entryId}` as Route

/** What a mould was at the moment at which a part came off it: release, repairs, dowels, checks. */
export function PieceThenSection({ piece, today }: { readonly piece: PieceThen; readonly today: string }) {
  const { pull, was, points } = piece
  const code = encodeURIComponent(pull.mouldCode)
  const day = (date: string) => shortDate(date, today)
  return (
    <section className="rule-top piece-then" style={{ marginTop: 28 }}>
      <h2>
        {pull.mouldCode} on {day(pull.doneOn)}
        {was ? `, its pull ${was.pullNo} in the book` : ''}
      </h2>
      {was === null ? (
        <p className="note">Its log changed while this was read; load the page again.</p>
      ) : (
        <div className="then">
          <div>
            <h3>Release</h3>
            <Release was={was} day={day} />
            <h3>Clearance and checks</h3>
            <Checks was={was} day={day} />
          </div>
          <div>
            <h3>Repairs and patches in it</h3>
            <Repairs was={was} day={day} />
            <h3>Dowels</h3>
            <Dowels was={was} points={points} day={day} />
          </div>
        </div>
      )}
      <p className="note no-print" style={{ marginTop: 8 }}>
        <Link href={`/parts?mould=${code}` as Route}>Every part off {pull.mouldCode}</Link>
        {' · '}
        <Link href={entryHref(`/moulds/${code}`, pull.id)}>The pull in its log</Link>
      </p>
    </section>
  )
}

interface Shown {
  readonly was: MouldThen
  readonly day: (date: string) => string
}

function Release({ was, day }: Shown) {
  const lines = releaseLines(was.release)
  return (
    <dl className="figures">
      {lines.map((line) => (
        <div key={line.firstEntryId}>
          <dt>
            {line.coats} × {line.kind === 'seal' ? 'sealer' : 'release agent'}, {line.place}
            <div className="note">
              {line.product}
              {line.lot ? `, lot ${line.lot}` : ', lot not written'};{' '}
              {line.firstOn === line.lastOn
                ? day(line.firstOn)
                : `${day(line.firstOn)} to ${day(line.lastOn)}`}
            </div>
          </dt>
          <dd className="no-print">
            <Link href={sinceHref(line.firstEntryId)}>parts since</Link>
          </dd>
        </div>
      ))}
      <FigureLine
        name="Stripped"
        value={was.strip ? `${day(was.strip.doneOn)}, ${was.strip.data.product}` : 'not in the book'}
      />
      <FigureLine
        name="Pulls before this one since a coat went on"
        value={was.pullsSinceCoat === null ? 'no coat in the book' : was.pullsSinceCoat}
      />
    </dl>
  )
}

function Checks({ was, day }: Shown) {
  const { clearance, leak } = was
  return (
    <dl className="figures">
      <FigureLine
        name="Cleared to lay up"
        value={
          clearance ? (
            `${day(clearance.doneOn)}, ${clearance.byName}`
          ) : (
            <span className="due">not cleared</span>
          )
        }
        note={clearance ? openWords(clearance.data) : undefined}
      />
      <FigureLine
        name="Last leak check"
        value={
          leak
            ? `${figure(leakLossMbar(leak.data.startMbar, leak.data.endMbar), 1)} mbar in ${figure(leak.data.minutes)} min`
            : 'none in the book'
        }
        note={
          leak
            ? `${day(leak.doneOn)}, ${leak.data.heat}, pins ${leak.data.pins}, ${leak.data.bagging}`
            : undefined
        }
      />
      {was.heats.map((heat) => (
        <FigureLine
          key={heat.id}
          name={`${heat.data.what}, ${day(heat.doneOn)}`}
          value={`${figure(heat.data.toC)} °C${heat.data.holdMin === null ? '' : `, ${figure(heat.data.holdMin)} min`}`}
        />
      ))}
    </dl>
  )
}

function openWords({
  open,
  because,
  proof,
}: {
  readonly open: readonly string[]
  readonly because: string | null
  readonly proof: boolean
}): string | undefined {
  const words = [
    proof ? 'for a proof pull' : null,
    open.length > 0 ? `open then: ${open.join('; ')}` : null,
    because ? `because ${because}` : null,
  ].filter((word): word is string => word !== null)
  return words.length > 0 ? words.join('. ') : undefined
}

function Repairs({ was, day }: Shown) {
  if (was.repairs.length === 0 && was.reMachined.length === 0) {
    return <p className="note">None in the book.</p>
  }
  return (
    <dl className="figures">
      {was.repairs.map((repair) => (
        <Repair key={repair.entry.id} repair={repair} day={day} />
      ))}
      {was.reMachined.map((entry) => (
        <Line key={entry.id} entry={entry} day={day} />
      ))}
    </dl>
  )
}

function Repair({
  repair: { entry, open, pullsBefore },
  day,
}: {
  readonly repair: RepairThen
  readonly day: Shown['day']
}) {
  const { what, detail } = entryWords(entry)
  return (
    <div>
      <dt>
        {entry.kind === 'patch-laid' && entry.patchId ? (
          <Link href={`/patches/${entry.patchId}` as Route}>{what}</Link>
        ) : (
          what
        )}
        {open ? <span className="due"> {open}</span> : null}
        <div className="note">
          {day(entry.doneOn)}, {pullsBefore} {pullsBefore === 1 ? 'pull' : 'pulls'} before this one
          {detail ? `; ${detail}` : ''}
        </div>
      </dt>
      <dd className="no-print">
        <Link href={sinceHref(entry.id)}>parts since</Link>
      </dd>
    </div>
  )
}

function Line({ entry, day }: { readonly entry: LogEntry; readonly day: Shown['day'] }) {
  const { what, detail } = entryWords(entry)
  return (
    <div>
      <dt>
        {what}
        <div className="note">
          {day(entry.doneOn)}
          {detail ? `, ${detail}` : ''}
        </div>
      </dt>
      <dd className="no-print">
        <Link href={sinceHref(entry.id)}>parts since</Link>
      </dd>
    </div>
  )
}

function Dowels({ was, points, day }: Shown & { readonly points: PieceThen['points'] }) {
  return (
    <>
      <p className="note">
        {points
          ? `Table issue ${points.number}, ${points.name}, of ${day(points.issuedOn)}`
          : 'No issue of locating points was in force on that day.'}
      </p>
      {points ? (
        <ul className="dowel-list">
          {points.points.map((point) => (
            <li key={point.id}>
              <b>{point.tag}</b>{' '}
              <span className="soft">
                {point.kind} ⌀ {figure(point.diameterMm)} at u {figure(point.uMm, 1)}, v{' '}
                {figure(point.vMm, 1)}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {was.dowels.length > 0 ? (
        <dl className="figures">
          {was.dowels.map((entry) => (
            <Line key={entry.id} entry={entry} day={day} />
          ))}
        </dl>
      ) : null}
    </>
  )
}

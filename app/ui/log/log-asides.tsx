import type { IsoDate } from '#lib/core/dates'
import { entryWords, type LogEntry, type MouldCounts, pullsWords } from '#lib/core/log/index'
import { whenWords } from '../history'
import { oneLine } from '../one-line'

/** The last that was written of a kind, so that nobody writes it a second time. */
export function LastOfKind({
  entries,
  today,
  timeZone,
}: {
  readonly entries: readonly LogEntry[]
  readonly today: IsoDate
  readonly timeZone: string
}) {
  const standing = entries.filter((entry) => entry.correctedById === null)
  if (standing.length === 0) return null
  return (
    <section className="rule-top">
      <h2>Last written of this kind</h2>
      <dl className="figures">
        {standing.map((entry) => {
          const { what, detail } = entryWords(entry)
          return (
            <div key={entry.id}>
              <dt>
                {what}
                <div className="note">{oneLine([detail, entry.note, entry.byName])}</div>
              </dt>
              <dd className="soft">{whenWords(entry, today, timeZone)}</dd>
            </div>
          )
        })}
      </dl>
    </section>
  )
}

/** What wears a mould out, counted: pulls, heats against its limits, pins in their bushes. */
export function Clocks({ counts }: { readonly counts: MouldCounts }) {
  const { heat, heatLimits, heatBeforeBook, pins } = counts
  const heats = heat.cycles.reduce((sum, cycle) => sum + cycle.count, 0)
  const limits = [
    heatLimits.inUseC === null ? null : `in use ${heatLimits.inUseC}`,
    heatLimits.freeC === null ? null : `free ${heatLimits.freeC}`,
    heatLimits.bondedC === null ? null : `bonded ${heatLimits.bondedC}`,
  ].filter(Boolean)
  return (
    <section className="rule-top">
      <h2>Clocks</h2>
      <dl className="figures">
        <div>
          <dt>Pulls</dt>
          <dd style={{ whiteSpace: 'normal' }}>{pullsWords(counts)}</dd>
        </div>
        <div>
          <dt>
            Heats
            <div className="note">
              {heat.cycles
                .slice(0, 4)
                .map((cycle) => `${cycle.toC} °C ${cycle.count} ×`)
                .join(', ')}
              {heat.cycles.length > 4 ? ' …' : ''}
            </div>
            <div className="note">
              {limits.length > 0 ? `limits ${limits.join(', ')} °C` : 'no heat limit is known'}
            </div>
          </dt>
          <dd>
            {heats} in the book
            {heatBeforeBook ? `, ${heatBeforeBook.low}-${heatBeforeBook.high} before` : ''}
          </dd>
        </div>
        {pins.map((pin) => (
          <div key={pin.tag ?? ''}>
            <dt>{pin.tag === null ? 'Every pin' : `Pin ${pin.tag}`}</dt>
            <dd>
              {pin.insertions} {pin.insertions === 1 ? 'insertion' : 'insertions'}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

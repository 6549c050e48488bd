import type { Route } from 'next'
import type { Matter } from '#lib/core/log/index'
import { Link } from './link'

const weight = { stop: 'held', look: 'due', note: 'soft' } as const

/** Where a matter is settled: the plan of a patch to be proved, else the log form of its kind with its place chosen. */
export function settleHref(code: string, matter: Matter): Route | null {
  if (!matter.settledBy) return null
  if (matter.settledBy === 'proved') return matter.patchId ? (`/patches/${matter.patchId}` as Route) : null
  const query = new URLSearchParams()
  if (matter.areaId) query.set('area', matter.areaId)
  if (matter.patchId) query.set('patch', matter.patchId)
  if (matter.settledBy === 'settled' && matter.entryId) query.set('entry', matter.entryId)
  const text = query.toString()
  return `/moulds/${encodeURIComponent(code)}/log/${matter.settledBy}${text ? `?${text}` : ''}` as Route
}

/** What must be settled before the next lay-up: each line with its word and its cure. */
export function Matters({
  code,
  matters,
  mayLog,
}: {
  readonly code: string
  readonly matters: readonly Matter[]
  readonly mayLog: boolean
}) {
  if (matters.length === 0) return <p className="note">Nothing stands against the next lay-up.</p>
  return (
    <dl className="figures">
      {matters.map((matter) => {
        const href = mayLog ? settleHref(code, matter) : null
        return (
          <div key={`${matter.code} ${matter.text}`}>
            <dt>
              {matter.text}
              <div className="note">{matter.cure}</div>
            </dt>
            <dd className={weight[matter.severity]}>
              {href ? <Link href={href}>{matter.word}</Link> : matter.word}
            </dd>
          </div>
        )
      })}
    </dl>
  )
}

import { becauseKey } from '#lib/core/repair/index'
import type { Finding } from '#lib/core/result'

const weight = { stop: 'held', look: 'due', note: 'soft' } as const

/** Stop, look, note: what is so, where, and what to do about it. */
export function Findings({
  findings,
  becauses = {},
}: {
  readonly findings: readonly Finding[]
  readonly becauses?: Readonly<Record<string, string>>
}) {
  if (findings.length === 0) return <p className="note">Nothing found that has to be told.</p>
  return (
    <table className="lines">
      <tbody>
        {findings.map((finding) => (
          <tr key={`${finding.code} ${finding.place ?? ''} ${finding.text}`}>
            <td className={weight[finding.severity]} style={{ width: 56 }}>
              {finding.severity}
            </td>
            <td>
              {finding.text}
              {finding.cure ? <span className="note"> {finding.cure}</span> : null}
              {becauses[becauseKey(finding)] ? (
                <div className="note">Because: {becauses[becauseKey(finding)]}</div>
              ) : null}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

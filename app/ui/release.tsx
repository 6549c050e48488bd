import { shortDate } from '#lib/core/dates'
import type { ReleaseCount } from '#lib/core/log/index'

/** Pulls since coated, sealed and stripped; what nobody has written down is not known, never nought. */
export function sinceWords(target: ReleaseCount): string {
  const since = (on: string | null, pulls: number) => (on === null ? '–' : String(pulls))
  return `${since(target.coatOn, target.pullsSinceCoat)} / ${since(target.sealOn, target.pullsSinceSeal)} / ${since(target.stripOn, target.pullsSinceStrip)}`
}

function told(target: ReleaseCount, today: string): string {
  if (target.coatOn === null) return 'no coat is written down'
  const coats = `${target.coatsSinceStrip} ${target.coatsSinceStrip === 1 ? 'coat' : 'coats'} since stripped`
  const tape = target.tapeOn && target.tapeSinceCoat ? `, tape ${target.tapeResult}` : ''
  return `${target.coatProduct ?? ''}, last on ${shortDate(target.coatOn, today)}; ${coats}${tape}`
}

export function Release({
  targets,
  today,
}: {
  readonly targets: readonly ReleaseCount[]
  readonly today: string
}) {
  const face = targets.find((target) => target.target === 'face')
  const shown = targets.filter(
    (target) =>
      target.target !== 'area' ||
      target.coatOn !== face?.coatOn ||
      target.sealOn !== face?.sealOn ||
      target.stripOn !== face?.stripOn,
  )
  return (
    <>
      <p className="note">Pulls since coated / sealed / stripped; a dash: not known</p>
      <dl className="figures">
        {shown.map((target) => (
          <div key={`${target.areaId} ${target.patchId}`}>
            <dt>
              {target.name.charAt(0).toUpperCase() + target.name.slice(1)}
              <div className="note">{told(target, today)}</div>
            </dt>
            <dd>{sinceWords(target)}</dd>
          </div>
        ))}
      </dl>
    </>
  )
}

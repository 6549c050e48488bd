import type { WorkingStep } from '#lib/core/result'
import { type SourceId, sources } from '#lib/core/sources'

function sourceTitle(id: string): string {
  return id in sources ? sources[id as SourceId].title : id
}

/** The lines that a person would write on paper, with the source of each. */
export function Working({
  steps,
  title = 'Working',
}: {
  readonly steps: readonly WorkingStep[]
  readonly title?: string
}) {
  if (steps.length === 0) return null
  return (
    <details>
      <summary>{title}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part of the page that scrolls must be reached by keyboard */}
      <section className="working" tabIndex={0} aria-label={title}>
        {steps.map((step, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the lines have a fixed order and no names of their own
          <div key={index}>
            <span>
              {step.symbol} = {step.formula} = {step.numbers} {step.unit === '1' ? '' : step.unit}
            </span>
            <br />
            <span className="note">
              {step.label}. {sourceTitle(step.sourceId)}
            </span>
          </div>
        ))}
      </section>
    </details>
  )
}

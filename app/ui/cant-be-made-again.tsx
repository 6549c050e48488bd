import type { Irreplaceable } from '#lib/core/lineage/index'
import './cant-be-made-again.css'

/**
 * What is lost for good when it is lost, told where something is about to be done to it. A shape stands beside the
 * words: a broken ring. Nothing where another one can be made.
 */
export function CantBeMadeAgain({
  of,
  act,
}: {
  readonly of: Irreplaceable | null
  /** What is about to be done: "Cutting it is final." */
  readonly act?: string | undefined
}) {
  if (!of) return null
  return (
    <p className="once-only">
      <svg viewBox="0 0 20 20" aria-hidden="true">
        <path d="M13.5 3.2 A 7.6 7.6 0 1 1 7 3" />
        <path d="M10 1 L 8.6 5.4 L 11.4 7.2 L 9.8 11.5" />
      </svg>
      <span>
        <b>{of.code} can't be made again:</b> {of.because}.{act ? ` ${act}` : ''}
      </span>
    </p>
  )
}

/** The same in a line of a table or a strip. */
export function OnceOnly({ of }: { readonly of: Irreplaceable | null }) {
  if (!of) return null
  return (
    <span className="once-only-word" title={`${of.code}: ${of.because}`}>
      <svg viewBox="0 0 20 20" aria-hidden="true">
        <path d="M13.5 3.2 A 7.6 7.6 0 1 1 7 3" />
        <path d="M10 1 L 8.6 5.4 L 11.4 7.2 L 9.8 11.5" />
      </svg>
      can't be made again
    </span>
  )
}

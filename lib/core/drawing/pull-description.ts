import { type PullStrokes, pullFates } from './pull-layout'

/** The strip in words. `shown` is how many of the pulls, counted from the latest, are drawn. */
export function describePulls(strokes: PullStrokes, shown: number): string {
  const { pulls, coats, patches } = strokes
  if (pulls.length === 0) return 'No pull yet.'
  const fates = pullFates
    .map((fate) => ({ fate, count: pulls.filter((pull) => pull.went === fate).length }))
    .filter(({ count }) => count > 0)
    .map(({ fate, count }) => `${count} ${fate}`)
    .join(', ')
  const hard = pulls.flatMap((pull, index) =>
    pull.went === 'forced' || pull.went === 'stuck' ? [`pull ${index + 1} ${pull.went}`] : [],
  )
  const unclear = pulls.filter((pull) => !pull.cleared).length
  const parts = [
    fates,
    hard.join(', '),
    unclear > 0 ? `${unclear} not cleared` : '',
    coats.length > 0
      ? `coated ${coats.length} times, last after pull ${Math.max(...coats.map((coat) => coat.afterPull))}`
      : '',
    patches.length > 0
      ? `patches: ${patches.map((patch) => `${patch.label} from pull ${patch.fromPull}`).join(', ')}`
      : '',
    shown < pulls.length ? `drawn are the last ${shown}` : '',
  ].filter((part) => part !== '')
  return `${parts.join('; ')}.`
}

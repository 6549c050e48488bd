import type { Finding } from '#lib/core/result'
import { counted, lineName, look, note } from './finding'
import { joinExactMm } from './limits'
import type { Path } from './path'
import { lengthWords } from './size'

/** What was dropped before the pieces were joined. */
export function dropFindings(
  doubled: readonly Path[],
  lengthless: readonly Path[],
  repeats: number,
): readonly Finding[] {
  const findings: Finding[] = []
  if (doubled.length > 0) {
    findings.push(
      note(
        'doubled-dropped',
        `${counted(doubled.length, 'piece lies', 'pieces lie')} on another one and ${
          doubled.length === 1 ? 'was' : 'were'
        } dropped: ${named(doubled)}.`,
        lineName(doubled[0]!.line),
        { count: doubled.length, lines: doubled.map(({ line }) => line) },
      ),
    )
  }
  if (lengthless.length > 0) {
    findings.push(
      note(
        'lengthless-dropped',
        `${counted(lengthless.length, 'piece has', 'pieces have')} no length and ${
          lengthless.length === 1 ? 'was' : 'were'
        } dropped: ${named(lengthless)}.`,
        lineName(lengthless[0]!.line),
        { count: lengthless.length, lines: lengthless.map(({ line }) => line) },
      ),
    )
  }
  if (repeats > 0) {
    findings.push(
      note(
        'repeated-points-dropped',
        `${counted(repeats, 'vertex repeats', 'vertices repeat')} the one before or the first and ${
          repeats === 1 ? 'was' : 'were'
        } dropped.`,
        null,
        { count: repeats },
      ),
    )
  }
  return findings
}

/** "3 LINE, 1 ARC" */
function named(paths: readonly Path[]): string {
  const counts = new Map<string, number>()
  for (const { entity } of paths) counts.set(entity, (counts.get(entity) ?? 0) + 1)
  return [...counts].map(([entity, count]) => `${count} ${entity}`).join(', ')
}

/** An outline lies in one plane; one that does not is looked at from above, and a person says whether that is meant. */
export function heightFindings(paths: readonly Path[]): readonly Finding[] {
  const lowest = paths.reduce((least, { heightsMm }) => Math.min(least, heightsMm[0]), Infinity)
  const highest = paths.reduce((most, { heightsMm }) => Math.max(most, heightsMm[1]), -Infinity)
  if (!(highest - lowest > joinExactMm)) return []
  return [
    look(
      'not-flat',
      `The pieces lie at heights (z) from ${lengthWords(lowest)} to ${lengthWords(highest)} mm; the outline is read as seen from above.`,
      null,
      'Confirm that this view is meant, or project the outline onto the plane of the face and save the DXF again.',
      { lowestMm: lowest, highestMm: highest },
    ),
  ]
}

import { worst } from '#lib/core/result'
import { counted, stop } from './finding'
import { boundsWords } from './size'
import type { OutlineReading } from './types'

/** Holes that are written out. */
const mostNamed = 10

/**
 * A reading as something kept as one loop can take it. Holes would be lost without a word, so an outline that has some
 * is refused with their sizes and places.
 */
export function oneOutline(reading: OutlineReading): OutlineReading {
  const holes = reading.loops.filter(({ role }) => role === 'hole')
  if (holes.length === 0 || worst(reading.findings) === 'stop') return reading
  const outer = reading.loops.find(({ role }) => role === 'outer')
  const named = holes.slice(0, mostNamed).map(({ boundsMm }) => boundsWords(boundsMm))
  const more = holes.length > mostNamed ? [`${holes.length - mostNamed} more`] : []
  const finding = stop(
    'holes',
    `The outline${outer === undefined ? '' : ` (${boundsWords(outer.boundsMm)})`} has ${counted(holes.length, 'hole', 'holes')} in it: ${[...named, ...more].join('; ')}. ` +
      'Here one loop is kept, and what stands in it would be cut away.',
    null,
    'Save a drawing with the outer loop alone; enter holes that are dowels or bushes as locating points.',
    {
      holes: holes.length,
      holesMm2: holes.map(({ areaMm2 }) => areaMm2),
      holesBoundsMm: holes.flatMap(({ boundsMm }) => boundsMm),
    },
  )
  return { ...reading, verdict: 'refuse', findings: [finding, ...reading.findings] }
}

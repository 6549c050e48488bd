import {
  area,
  type Loop,
  lobes,
  loopArea,
  type Point,
  type SelfCrossing,
  selfCrossings,
  signedArea,
  uncrossed,
} from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import { figure } from '#lib/core/units'
import { look, placeName } from './finding'

/** Places that are looked for; an outline with more of them is a scribble. */
const mostPlaces = 100

/** Places and lobes that are written out. */
const mostNamed = 10

export interface SelfCrossed {
  readonly finding: Finding
  /** All that the loop encloses, each lobe once; null when there are too many crossings to tell. */
  readonly enclosedMm2: number | null
}

/**
 * Asks about an outline that meets itself: every place, the lobes, and another order of its points where one helps.
 * Null when it doesn't. `asGiven`: the points are those that a person gave, so that their order can be wrong.
 */
export function selfCrossed(loop: Loop, asGiven: boolean): SelfCrossed | null {
  const meetings = selfCrossings(loop, mostPlaces)
  const [first] = meetings
  if (first === undefined) return null
  const all = meetings.length < mostPlaces
  const lobesMm2 = all ? lobes(loop).map((lobe) => area([lobe])) : []
  const signedAreaMm2 = signedArea(loop)
  const offered = asGiven && all ? otherOrder(loop) : null
  const finding = look(
    'self-crossing',
    `The outline ${placeWords(meetings)}. ${areaWords(lobesMm2, signedAreaMm2)}`,
    placeName(first.at),
    cureWords(offered),
    {
      crossingsMm: meetings.flatMap(({ at }) => [...at]),
      lobesMm2,
      signedAreaMm2,
      ...(offered === null ? {} : { orderOffered: offered.order, areaOfferedMm2: offered.areaMm2 }),
    },
  )
  return { finding, enclosedMm2: all ? lobesMm2.reduce((sum, each) => sum + each, 0) : null }
}

const kindWords = {
  crossing: 'crosses itself',
  touch: 'touches itself',
  overlap: 'runs back along itself',
} as const

/** "crosses itself at u 50, v 40 mm; touches itself at ..." */
function placeWords(meetings: readonly SelfCrossing[]): string {
  const named = meetings.slice(0, mostNamed)
  const words = (['crossing', 'touch', 'overlap'] as const).flatMap((kind) => {
    const places = named.filter((meeting) => meeting.kind === kind).map(({ at }) => placeName(at))
    return places.length === 0 ? [] : [`${kindWords[kind]} at ${places.join(', at ')}`]
  })
  const more = meetings.length - named.length
  const atLeast = meetings.length < mostPlaces ? '' : 'at least '
  return `${words.join('; ')}${more === 0 ? '' : ` and at ${atLeast}${more} more places`}`
}

function areaWords(lobesMm2: readonly number[], signedAreaMm2: number): string {
  if (lobesMm2.length === 0) return "With so many crossings its area can't be told."
  const named = lobesMm2.slice(0, mostNamed).map((mm2) => figure(mm2, 1))
  const more = lobesMm2.length > mostNamed ? ` and ${lobesMm2.length - mostNamed} more` : ''
  return lobesMm2.length === 1
    ? `It encloses one piece of ${named[0]} mm2.`
    : `It encloses ${lobesMm2.length} lobes of ${named.join(', ')} mm2${more}; added with their signs they make ${figure(signedAreaMm2, 1)} mm2.`
}

interface Offer {
  /** Places in the given order, from 1. */
  readonly order: readonly number[]
  readonly areaMm2: number
}

/** The same points in an order that crosses nothing, checked so; null when none was found. */
function otherOrder(loop: Loop): Offer | null {
  const better = uncrossed(loop)
  if (better === null) return null
  const places = new Map<Point, number>(loop.map((point, index) => [point, index + 1]))
  return { order: better.map((point) => places.get(point)!), areaMm2: loopArea(better) }
}

function cureWords(offered: Offer | null): string {
  const correct = 'Correct the outline at the places named, so that one edge follows another.'
  if (offered === null) return correct
  return (
    `Put the points in another order: ${offered.order.join(', ')} crosses nothing and encloses ${figure(offered.areaMm2, 1)} mm2. ` +
    'Take it only if that is the edge that is meant; otherwise correct the outline at the places named.'
  )
}

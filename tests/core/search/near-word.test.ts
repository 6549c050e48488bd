import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { nearestWord, slipsAllowed, slipsBetween } from '#lib/core/search/index'

const letters = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'd'), maxLength: 9 })

/** Counted straight from the definition, without a table. */
function slowly(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length
  const least = [
    slowly(a.slice(1), b) + 1,
    slowly(a, b.slice(1)) + 1,
    slowly(a.slice(1), b.slice(1)) + (a[0] === b[0] ? 0 : 1),
  ]
  if (a.length > 1 && b.length > 1 && a[0] === b[1] && a[1] === b[0])
    least.push(slowly(a.slice(2), b.slice(2)) + 1)
  return Math.min(...least)
}

describe('slips between words', () => {
  test.each([
    ['hull', 'hull', 0],
    ['hull', 'hul', 1],
    ['hull', 'hulll', 1],
    ['hull', 'hall', 1],
    ['hull', 'hlul', 1],
    ['starboard', 'starbord', 1],
    ['hull', 'deck', 3],
  ])('%s, typed as %s: %d', (meant, typed, slips) => expect(slipsBetween(typed, meant, 2)).toBe(slips))

  test('are counted as the definition says', () => {
    const short = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 5 })
    fc.assert(
      fc.property(short, short, (a, b) => {
        expect(slipsBetween(a, b, 9)).toBe(slowly(a, b))
      }),
    )
  })

  test('are the same both ways, none only for the same word, and never above the bound', () => {
    fc.assert(
      fc.property(letters, letters, fc.integer({ min: 0, max: 4 }), (a, b, most) => {
        expect(slipsBetween(a, b, most)).toBe(slipsBetween(b, a, most))
        expect(slipsBetween(a, b, most) === 0).toBe(a === b)
        expect(slipsBetween(a, b, most)).toBeLessThanOrEqual(most + 1)
      }),
    )
  })
})

describe('the word that was meant', () => {
  const words = new Map([
    ['hull', 40],
    ['hall', 1],
    ['deck', 12],
    ['starboard', 30],
  ])

  test('has the fewest slips; of equals the one that stands more often', () => {
    expect(nearestWord('hul', words)).toBe('hull')
    expect(nearestWord('hlul', words)).toBe('hull')
    expect(nearestWord('holl', words)).toBe('hull')
    expect(nearestWord('stabroard', words)).toBe('starboard')
  })

  test('is none when every word is further off than a slip of the finger', () => {
    expect(nearestWord('port', words)).toBeNull()
    expect(nearestWord('de', words)).toBeNull()
    expect(slipsAllowed(2)).toBe(0)
  })
})

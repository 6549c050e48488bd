import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type MouldStanding, mouldStates, setStanding } from '#lib/core/log/index'

const standing = (
  state: MouldStanding['state'],
  reason = '',
  also: MouldStanding['also'] = [],
): MouldStanding => ({
  state,
  reason,
  also,
})
const piece = (code: string, own: MouldStanding) => ({ code, standing: own })

describe('a split mould stands as its worst piece', () => {
  test('with the piece and its reason', () => {
    expect(
      setStanding([
        piece('LH-P', standing('proof pull only', 'Patch 7, floor B5')),
        piece('LH-S', standing('fit for use')),
        piece('LH-B', standing('racked')),
      ]),
    ).toEqual({
      state: 'proof pull only',
      reason: 'LH-P: Patch 7, floor B5',
      pieces: ['LH-P'],
      also: ['racked', 'fit for use'],
    })
  })

  test('pieces at the same state are named together, each reason once', () => {
    const { reason, pieces } =
      setStanding([
        piece('LH-P', standing('held', 'crack')),
        piece('LH-S', standing('held', 'crack')),
        piece('LH-B', standing('held')),
      ]) ?? {}
    expect(reason).toBe('LH-P, LH-S: crack; LH-B')
    expect(pieces).toEqual(['LH-P', 'LH-S', 'LH-B'])
  })

  test('all pieces alike need no codes', () => {
    const part = standing('part in it', 'proof pull')
    expect(setStanding([piece('A', part), piece('B', part)])?.reason).toBe('proof pull')
    expect(setStanding([piece('A', standing('fit for use'))])).toMatchObject({
      state: 'fit for use',
      reason: '',
    })
  })

  test('what else holds of any piece is told beside it', () => {
    const both = setStanding([piece('A', standing('away', 'lent', ['held'])), piece('B', standing('racked'))])
    expect(both?.also).toEqual(['held', 'racked'])
  })

  test('without a piece there is no answer', () => {
    expect(setStanding([])).toBeNull()
  })
})

test('never better than any piece, and the same in any order of the pieces', () => {
  const anyStanding = fc.record({
    state: fc.constantFrom(...mouldStates),
    reason: fc.string({ maxLength: 8 }),
    also: fc.constant([]),
  })
  fc.assert(
    fc.property(fc.array(anyStanding, { minLength: 1, maxLength: 8 }), fc.nat(), (standings, turn) => {
      const pieces = standings.map((own, index) => piece(`P-${index}`, own))
      const whole = setStanding(pieces)
      const rank = (state: string) => (mouldStates as readonly string[]).indexOf(state)
      const worst = Math.min(...standings.map(({ state }) => rank(state)))
      expect(rank(whole?.state ?? '')).toBe(worst)
      const at = turn % pieces.length
      const turned = setStanding([...pieces.slice(at), ...pieces.slice(0, at)])
      expect(turned?.state).toBe(whole?.state)
      expect(turned?.also).toEqual(whole?.also)
      expect([...(turned?.pieces ?? [])].sort()).toEqual([...(whole?.pieces ?? [])].sort())
    }),
  )
})

import { expect, test } from 'vitest'
import { isRisky, mouldLost, patternLost } from '#lib/core/lineage/index'

const mould = { code: 'NC-1', canBeMadeAgain: true }
const pattern = { code: 'NC-PAT', available: true, canBeMadeAgain: true }

test('a mould is lost for good when it is said so, or when its pattern is gone for good', () => {
  expect(mouldLost(mould, pattern)).toBeNull()
  expect(mouldLost(mould, null)).toBeNull()
  expect(mouldLost(mould, { ...pattern, canBeMadeAgain: false })).toBeNull()
  expect(mouldLost(mould, { ...pattern, available: false })).toBeNull()
  expect(mouldLost(mould, { ...pattern, available: false, canBeMadeAgain: false })).toEqual({
    code: 'NC-1',
    because: "its pattern NC-PAT is gone and can't be made again",
  })
  expect(mouldLost({ ...mould, canBeMadeAgain: false }, pattern)?.because).toMatch('no other mould like it')
  expect(mouldLost({ ...mould, canBeMadeAgain: false }, null)?.because).toMatch('no pattern')
})

test('a pattern is lost for good only when somebody has said so', () => {
  expect(patternLost(pattern)).toBeNull()
  expect(patternLost({ ...pattern, available: false })).toBeNull()
  expect(patternLost({ ...pattern, canBeMadeAgain: false })?.code).toBe('NC-PAT')
})

test('acts that take something away warn, those that only write down do not', () => {
  expect(
    (['strip', 're-machined', 'moved', 'state', 'repair', 'dowel-changed'] as const).every(isRisky),
  ).toBe(true)
  expect((['pull', 'coat', 'note', 'leak-check', 'inspection'] as const).some(isRisky)).toBe(false)
})

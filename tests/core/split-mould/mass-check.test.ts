import { expect, test } from 'vitest'
import { massCheck } from '#lib/core/split-mould/index'

const piece = (code: string, massKg: number | null) => ({ code, massKg })

test('the whole less its pieces is hardware and frame', () => {
  const check = massCheck(112, [piece('P', 47), piece('S', 46.5)])
  expect(check).toMatchObject({ piecesKg: 93.5, restKg: 18.5, notWeighed: [] })
  expect(check?.note).toBe('Its pieces weigh 93.5 kg together; 18.5 kg are hardware and frame')
})

test('a whole that weighs less than its pieces is weighed again', () => {
  expect(massCheck(90, [piece('P', 47), piece('S', 46.5)])?.note).toMatch('weigh again')
})

test('within what two scales differ nothing is said', () => {
  expect(massCheck(94, [piece('P', 47), piece('S', 46.5)])?.note).toBeNull()
  expect(massCheck(93, [piece('P', 47), piece('S', 46.5)])?.note).toBeNull()
})

test('what was not weighed is said, and nothing is worked out from it', () => {
  expect(massCheck(112, [piece('P', 47), piece('S', null)])).toMatchObject({
    restKg: null,
    note: 'Not weighed: S',
  })
  expect(massCheck(null, [piece('P', 47)])?.note).toMatch('The whole was not weighed')
  expect(massCheck(null, [piece('P', null)])).toBeNull()
})

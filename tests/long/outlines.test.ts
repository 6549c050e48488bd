import * as fc from 'fast-check'
import { test } from 'vitest'
import { readOutline } from '#lib/exchange/outline/index'
import { read } from '../core/exchange/draw-dxf'
import { drawings, expectSound, mutated, tables, units } from '../core/exchange/mutations'

/** The same laws as in the short run, over many more files. */

test('10,000 mutated drawings: always an answer', () => {
  fc.assert(
    fc.property(mutated(drawings), units, (text, unit) => expectSound(read(text, unit))),
    { numRuns: 10_000 },
  )
})

test('10,000 mutated tables: always an answer', () => {
  fc.assert(
    fc.property(mutated(tables), units, (text, unit) => expectSound(read(text, unit, 'pasted'))),
    { numRuns: 10_000 },
  )
})

test('10,000 random files: always an answer', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), units, (bytes, unit) =>
      expectSound(readOutline({ name: 'file', bytes, unit })),
    ),
    { numRuns: 10_000 },
  )
})

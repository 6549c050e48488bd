import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cellOf } from '#lib/core/geometry/index'
import { fold, kindsNamed, longestAsked, readAsked, readCell, squeeze } from '#lib/core/search/index'

describe('what is compared', () => {
  test.each([
    ['Großer Kratzer', 'grosser kratzer'],
    ['HÜLLE', 'hulle'],
    ['Zoë Lachance', 'zoe lachance'],
    ['Björn Thalgård', 'bjorn thalgard'],
    ['Łódź, Øre, Đak, æ, Œ', 'lodz, ore, dak, ae, oe'],
    ['5 µm', '5 μm'],
  ])('%s is compared as %s', (typed, compared) => expect(fold(typed)).toBe(compared))

  test('folding twice changes nothing more', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 20 }), (text) => {
        expect(fold(fold(text))).toBe(fold(text))
      }),
    )
  })

  test('a code is the same with other signs between', () => {
    expect(['LH-P2', 'lh p2', 'lhp2', 'LH_P.2'].map(squeeze)).toEqual(['lhp2', 'lhp2', 'lhp2', 'lhp2'])
  })
})

describe('what was asked', () => {
  test('words without the quotes and commas round them, each once, each with a letter or a figure', () => {
    expect(readAsked('  "Hull", (port)  hull - % ').words).toEqual(['hull', 'port'])
    for (const nothing of ['', '   ', '%', '_ %', "';--", '\\', '…'])
      expect(readAsked(nothing).words).toEqual([])
  })

  test('a number after "patch", with what stands before it', () => {
    expect(readAsked('Patch 7').patch).toEqual({ number: 7, words: [] })
    expect(readAsked('lh-p patch #12').patch).toEqual({ number: 12, words: ['lh-p'] })
    expect(readAsked('lh-p patches').patch).toEqual({ number: null, words: ['lh-p'] })
    expect(readAsked('patch test').patch).toBeNull()
    expect(readAsked('dispatch 7').patch).toBeNull()
  })

  test('a cell of the location grid at the end', () => {
    expect(readAsked('floor B5').cell).toEqual({ cell: { row: 1, column: 4 }, words: ['floor'] })
    expect(readAsked('floor BB12').cell?.cell).toEqual({ row: 49, column: 11 })
    for (const none of ['floor', 'floor I5', 'floor O5', 'floor B0', 'floor D03', 'B5 floor'])
      expect(readAsked(none).cell).toBeNull()
  })

  test('never throws, and never grows beyond bounds', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 250 }), (text) => {
        const asked = readAsked(text)
        expect(asked.words.length).toBeLessThanOrEqual(8)
        expect(asked.words.join(' ').length).toBeLessThanOrEqual(4 * longestAsked)
      }),
    )
  })
})

test('the name of every cell is read back as the cell', () => {
  const steps = fc.integer({ min: -400, max: 400 })
  fc.assert(
    fc.property(steps, steps, fc.double({ min: 5, max: 1000, noNaN: true }), (row, column, cellMm) => {
      const name = cellOf({ originMm: [0, 0], cellMm }, [(column + 0.5) * cellMm, -(row + 0.5) * cellMm])
      expect(readCell(name)).toEqual({ row, column })
      expect(readCell(name.toLowerCase())).toEqual({ row, column })
    }),
  )
})

test('a word stands for the kinds of entries that are named so', () => {
  expect(kindsNamed('leak')).toEqual(['leak-check'])
  expect(kindsNamed('patch')).toEqual(expect.arrayContaining(['patch-laid', 'test-patch']))
  expect(kindsNamed('le')).toEqual([])
  expect(kindsNamed('lay')).toEqual(['cleared'])
})

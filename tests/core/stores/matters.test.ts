import { expect, test } from 'vitest'
import { stockCover, stockMatters, takingFindings } from '#lib/core/stores/index'
import { roll, subject, tin, today } from './sample-stock'

const codes = (...subjects: Parameters<typeof stockMatters>[0]) =>
  stockMatters(subjects, today).map((matter) => matter.code)

test('nothing is told of what is fit', () => {
  expect(codes(subject())).toEqual([])
})

test('low is judged over all usable lots, not by one rest of a roll', () => {
  expect(
    codes(subject({ lots: [roll({ lot: 'a', remaining: 2 }), roll({ lot: 'b', remaining: 8 })] })),
  ).toEqual([])
  expect(
    codes(subject({ lots: [roll({ lot: 'a', remaining: 2 }), roll({ lot: 'b', remaining: 7.9 })] })),
  ).toEqual(['stock-low'])
})

test('a late lot does not count towards what there is', () => {
  const lots = [roll({ lot: 'a', expiresOn: '2026-11-24' })]
  expect(codes(subject({ lots }))).toEqual(['late', 'stock-none'])
})

test('without a limit, or no longer bought, it is never low; its lots are told all the same', () => {
  expect(codes(subject({ lowBelow: null, lots: [] }))).toEqual([])
  expect(codes(subject({ retired: true, lots: [roll({ expiresOn: '2026-11-24' })] }))).toEqual(['late'])
  expect(codes(subject({ lots: [] }))).toEqual(['stock-none'])
})

test('what is late stands before what will be, and each names its lot and its act', () => {
  const matters = stockMatters(
    [
      subject({ id: 'a', name: 'Agent', unit: 'l', lowBelow: null, lots: [tin({ openedOn: '2026-06-01' })] }),
      subject({ id: 'b', lots: [roll({ expiresOn: '2026-10-01' }), roll({ lot: 'R-2' })] }),
    ],
    today,
  )
  expect(matters.map(({ code, lot, on, severity }) => [code, lot, on, severity])).toEqual([
    ['late', 'R-1', '2026-10-01', 'look'],
    ['nearly-late', 'A-1', '2026-11-28', 'note'],
  ])
  expect(matters.every((matter) => matter.cure !== '')).toBe(true)
})

test('cover: fit lots that reach, lots that do not, lots that are gone, none ever kept', () => {
  const cover = (...lots: ReturnType<typeof roll>[]) => stockCover('Surface twill', 1.9, lots, today)
  expect(cover(roll({ lot: 'a', remaining: 4 }), roll({ lot: 'b', remaining: 8 }))).toMatchObject({
    enough: true,
    text: '12 m² fit for use in 2 lots',
  })
  expect(cover(roll({ remaining: 1.8 }))).toMatchObject({
    enough: false,
    text: 'only 1.8 m² fit for use in 1 lot',
  })
  expect(cover(roll({ expiresOn: '2026-01-01' }))).toMatchObject({
    enough: false,
    text: 'none is fit for use',
  })
  expect(cover(roll({ closedOn: '2026-01-01', closedWhy: 'used up' }))).toMatchObject({ enough: false })
  expect(cover()).toMatchObject({ stock: null, enough: true })
})

test('taking: a lot out of life asks for a because, a short or closed one is a stop', () => {
  const found = (lot: ReturnType<typeof roll>, amount: number) =>
    takingFindings([{ subjectName: 'S200', lot, amount }], today).map(
      ({ code, severity }) => `${severity} ${code}`,
    )
  expect(found(roll(), 30)).toEqual([])
  expect(found(roll(), 30.001)).toEqual(['stop lot-short'])
  expect(found(roll({ expiresOn: '2026-11-24' }), 1)).toEqual(['look lot-late'])
  expect(found(roll({ outHours: 241, expiresOn: '2026-11-24' }), 31)).toEqual([
    'look lot-late',
    'look lot-out-life-gone',
    'stop lot-short',
  ])
  expect(found(roll({ closedOn: '2026-01-01', closedWhy: 'used up' }), 1)).toEqual(['stop lot-closed'])
})

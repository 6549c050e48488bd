import { describe, expect, test } from 'vitest'
import { beforeLayUp, defaultUpkeepRules, type MouldCounts } from '#lib/core/log/index'
import { open, quietCounts } from './sample-counts'

const today = '2026-06-01'
const matters = (counts: Partial<MouldCounts>, day = today) =>
  beforeLayUp(quietCounts(counts), defaultUpkeepRules, day, `${day}T10:00:00Z`)
const away = (untilOn: string | null) => ({
  flags: [{ state: 'away' as const, reason: 'at the test house', doneOn: '2026-05-01', untilOn }],
})

describe('what is bound to a day', () => {
  test('an open matter past its day is a look that names who, what and how long', () => {
    const [found] = matters({ openMatters: [open({ untilOn: '2026-05-29' })] })
    expect(found).toMatchObject({
      code: 'matter-over',
      severity: 'look',
      text: 'Open matter until 29 May, 3 days over: order a bush; Ada',
      settledBy: 'settled',
      entryId: 'm',
    })
    expect(matters({ openMatters: [open({ untilOn: today }), open()] })).toEqual([])
  })

  test('a state set by hand past its day', () => {
    expect(matters(away('2026-05-29')).map((matter) => [matter.code, matter.severity])).toEqual([
      ['not-fit', 'stop'],
      ['state-over', 'look'],
    ])
    expect(matters(away('2026-05-29'))[1]?.text).toBe('Away until 29 May, 3 days over: at the test house')
    expect(matters(away(today))).toHaveLength(1)
    expect(matters(away(null))).toHaveLength(1)
  })
})

import { expect, test } from 'vitest'
import { add, countsOf, nothing, onePassed, verdict } from '#lib/platform/test-counts.js'

const file = (status: string, ...statuses: readonly string[]) => ({
  name: '/checkout/tests/a.test.ts',
  status,
  assertionResults: statuses.map((one, at) => ({ status: one, fullName: `test ${at}` })),
})

test('passed, failed and skipped are counted one by one', () => {
  const report = { testResults: [file('failed', 'passed', 'failed', 'skipped'), file('passed', 'passed')] }
  expect(countsOf('core', report, 1, '/checkout')).toEqual({
    passed: 2,
    failed: 1,
    skipped: 1,
    failures: ['core: tests/a.test.ts > test 1'],
  })
})

test('a file that breaks before its tests run is a failure', () => {
  const report = { testResults: [file('passed', 'passed'), file('failed')] }
  expect(countsOf('core', report, 1, '/checkout')).toMatchObject({ passed: 1, failed: 1 })
})

test.each([
  ['no report', null, 1],
  ['no test', { testResults: [] }, 0],
  ['only skipped tests', { testResults: [file('passed', 'skipped')] }, 0],
  ['an error outside of any test', { testResults: [file('passed', 'passed')] }, 1],
])('%s is a failure', (_what, report, exitCode) => {
  expect(countsOf('core', report, exitCode, '/checkout').failed).toBe(1)
})

test('the verdict is one line', () => {
  expect(verdict(add(add(nothing, onePassed), onePassed))).toBe('2 passed, 0 failed')
})

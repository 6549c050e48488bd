import { expect, test } from 'vitest'
import { parsePostmaster } from '#lib/platform/postmaster.js'

const text = '4711\n/data\n1790000000\n5433\n\n127.0.0.1\n  1234 56\nready   \n'

test('process, port and state are read', () => {
  expect(parsePostmaster(text)).toEqual({ pid: 4711, port: 5433, ready: true })
  expect(parsePostmaster(text.replace('ready   ', 'starting'))).toMatchObject({ ready: false })
})

test('a file that is still being written is not ready, or nothing yet', () => {
  expect(parsePostmaster('4711\n/data\n')).toEqual({ pid: 4711, port: 0, ready: false })
  expect(parsePostmaster('')).toBeNull()
})

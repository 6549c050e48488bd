import { expect, test } from 'vitest'
import { isOlder } from '#lib/platform/node-version.js'

test.each([
  ['20.8.1', '20.9', true],
  ['v18.20.0', '20.9', true],
  ['9.11.2', '20.9', true],
  ['20.9.0', '20.9', false],
  ['20.20.2', '20.9', false],
  ['22.0.0', '20.9', false],
  ['20.9', '20.9.1', true],
])('Node %s is older than %s: %s', (version, least, older) => {
  expect(isOlder(version, least)).toBe(older)
})

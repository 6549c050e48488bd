import { expect, test } from 'vitest'
import { missingPackages } from '#lib/platform/lockfile.js'

const lock = {
  packages: {
    '': { version: '0.1.0' },
    'node_modules/a': { version: '1.0.0', integrity: 'sha512-a' },
    'node_modules/a/node_modules/b': { version: '2.0.0', integrity: 'sha512-b' },
    'node_modules/other-machine': { version: '3.0.0', integrity: 'sha512-c', optional: true },
  },
}

test('a tree that has all but the optional packages lacks nothing', () => {
  const { '': _root, 'node_modules/other-machine': _optional, ...packages } = lock.packages
  expect(missingPackages(lock, { packages })).toEqual([])
})

test('a missing package is named by its folder', () => {
  expect(missingPackages(lock, { packages: { 'node_modules/a': lock.packages['node_modules/a'] } })).toEqual([
    'node_modules/a/node_modules/b',
  ])
})

test('another version or other contents count as missing', () => {
  const packages = {
    'node_modules/a': { version: '1.0.1', integrity: 'sha512-a' },
    'node_modules/a/node_modules/b': { version: '2.0.0', integrity: 'sha512-changed' },
  }
  expect(missingPackages(lock, { packages })).toHaveLength(2)
})

test('an optional package of another version counts as missing', () => {
  const packages = {
    ...lock.packages,
    'node_modules/other-machine': { version: '2.9.9', integrity: 'sha512-c' },
  }
  expect(missingPackages(lock, { packages })).toEqual(['node_modules/other-machine'])
})

test('nothing installed: everything is missing', () => {
  expect(missingPackages(lock, {})).toHaveLength(2)
})

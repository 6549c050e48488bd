import { mkdirSync, mkdtempSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { sourceHash } from '#lib/platform/source-hash.js'

let root = ''

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'source-hash-'))
  mkdirSync(join(root, 'app/deep'), { recursive: true })
  writeFileSync(join(root, 'app/page.tsx'), 'page')
  writeFileSync(join(root, 'app/deep/part.ts'), 'part')
  writeFileSync(join(root, 'next.config.js'), 'config')
})

afterEach(() => rmSync(root, { recursive: true }))

const hash = () => sourceHash(root, ['app', 'next.config.js', 'not-there'], (path) => path === 'app/made')

test('the same files give the same hash, whatever their times', () => {
  const before = hash()
  utimesSync(join(root, 'app/page.tsx'), 1, 1)
  expect(hash()).toBe(before)
})

test('a change of one file deep down, a new name, a new file and a missing file each give another hash', () => {
  const seen = new Set([hash()])
  writeFileSync(join(root, 'app/deep/part.ts'), 'Part')
  seen.add(hash())
  renameSync(join(root, 'app/deep/part.ts'), join(root, 'app/deep/piece.ts'))
  seen.add(hash())
  writeFileSync(join(root, 'not-there'), '')
  seen.add(hash())
  rmSync(join(root, 'next.config.js'))
  seen.add(hash())
  expect(seen.size).toBe(5)
})

test('contents that only moved between two files give another hash', () => {
  writeFileSync(join(root, 'app/a'), 'x')
  writeFileSync(join(root, 'app/b'), 'y')
  const before = hash()
  writeFileSync(join(root, 'app/a'), 'y')
  writeFileSync(join(root, 'app/b'), 'x')
  expect(hash()).not.toBe(before)
})

test('what is left out does not count', () => {
  const before = hash()
  mkdirSync(join(root, 'app/made'))
  writeFileSync(join(root, 'app/made/client.ts'), 'generated')
  expect(hash()).toBe(before)
})

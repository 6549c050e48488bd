import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { keepSecrets, readableCode, readSecrets } from '#lib/platform/secrets.js'

let folder = ''
let path = ''

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'secrets-'))
  path = join(folder, 'inside/secrets.json')
})

afterEach(() => rmSync(folder, { recursive: true }))

test('secrets are made once and stay the same', () => {
  const first = readSecrets(path)
  expect(readSecrets(path)).toEqual(first)
  expect(Buffer.from(first.actionsKey, 'base64')).toHaveLength(32)
})

test.skipIf(process.platform === 'win32')('the file and its folder are for this account alone', () => {
  readSecrets(path)
  expect(statSync(path).mode & 0o777).toBe(0o600)
  expect(statSync(join(folder, 'inside')).mode & 0o777).toBe(0o700)
  writeFileSync(path, readFileSync(path), { mode: 0o644 })
  keepSecrets(path, readSecrets(path))
  expect(statSync(path).mode & 0o777).toBe(0o600)
})

test('a secret that an older file lacks is made, the others are kept', () => {
  const { actionsKey, ...rest } = readSecrets(path)
  writeFileSync(path, JSON.stringify(rest))
  const next = readSecrets(path)
  expect(next.authSecret).toBe(rest.authSecret)
  expect(next.actionsKey).not.toBe(actionsKey)
  expect(readSecrets(path)).toEqual(next)
})

test('a damaged file is refused, and left as it is', () => {
  readSecrets(path)
  writeFileSync(path, '{"authSecret":')
  expect(() => readSecrets(path)).toThrow(/secrets\.json can't be read/)
  expect(readFileSync(path, 'utf8')).toBe('{"authSecret":')
})

test('a readable code has four groups of four, and every sign can come up', () => {
  const codes = Array.from({ length: 400 }, () => readableCode())
  for (const code of codes) expect(code).toMatch(/^([a-z2-9]{4}-){3}[a-z2-9]{4}$/)
  expect(new Set(codes).size).toBe(400)
  expect(new Set(codes.join('').replaceAll('-', '')).size).toBe(31)
})

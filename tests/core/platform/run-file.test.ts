import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { known, lives, processMark, waitUntil } from '#lib/platform/process-mark.js'
import { readRun, takeRun } from '#lib/platform/run-file.js'

let folder = ''
let path = ''

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'run-file-'))
  path = join(folder, 'run.json')
})

afterEach(() => rmSync(folder, { recursive: true }))

test('a second start is refused while the first one lives, with its address', () => {
  const run = takeRun(path)
  expect(() => takeRun(path)).toThrow(/just being started/)
  run.note({ address: 'http://localhost:3000' })
  expect(() => takeRun(path)).toThrow(/already running .*http:\/\/localhost:3000/)
  run.release()
  expect(existsSync(path)).toBe(false)
  takeRun(path).release()
})

test('a killed start’s file is taken over, and what it noted is handed on', async () => {
  const child = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)'])
  const launcher = known(child.pid ?? 0)
  writeFileSync(
    path,
    JSON.stringify({ launcher, address: 'http://localhost:3000', web: { pid: 1, mark: 'x' } }),
  )
  expect(() => takeRun(path)).toThrow(/already running/)
  child.kill('SIGKILL')
  expect(await waitUntil(() => !lives(launcher), 5_000)).toBe(true)
  expect(takeRun(path).before?.web).toEqual({ pid: 1, mark: 'x' })
  expect(readRun(path)?.launcher.pid).toBe(process.pid)
  expect(readdirSync(folder)).toEqual(['run.json'])
})

test('the same process number with another beginning is a stranger', () => {
  writeFileSync(path, JSON.stringify({ launcher: { pid: process.pid, mark: 'long ago' } }))
  expect(takeRun(path).before?.launcher.mark).toBe('long ago')
})

test('a half-written file does not keep anybody out', () => {
  writeFileSync(path, '{"launcher":')
  expect(takeRun(path).before).toBeNull()
})

test('a process that is not there has no mark', () => {
  expect(processMark(2 ** 22 + 1)).toBeNull()
  expect(processMark(process.pid)).toBe(processMark(process.pid))
})

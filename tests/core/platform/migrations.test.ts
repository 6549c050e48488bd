import { expect, test } from 'vitest'
import { pendingMigrations } from '#lib/platform/migrate.js'
import { migrationFolder } from '#lib/platform/migration'

const migration = (name: string, checksum = name) => ({ name, checksum, script: '' })
const applied = (name: string, checksum = name, finished = true) => ({ name, checksum, finished })

const here = [migration('1_records'), migration('2_jobs'), migration('3_costs')]

test('an empty database gets all of them in order; a current one none', () => {
  expect(pendingMigrations(here, []).map(({ name }) => name)).toEqual(['1_records', '2_jobs', '3_costs'])
  expect(pendingMigrations(here, [applied('1_records'), applied('2_jobs'), applied('3_costs')])).toEqual([])
})

test('one that came in between by a merge is applied too', () => {
  expect(pendingMigrations(here, [applied('1_records'), applied('3_costs')])).toEqual([migration('2_jobs')])
})

test('a database with a migration that the code does not have is newer than the code', () => {
  expect(() => pendingMigrations(here, [applied('1_records'), applied('9_later')])).toThrow(
    /newer schema than the code.*9_later.*Update the code/,
  )
})

test('a migration that was changed after it was applied is refused', () => {
  expect(() => pendingMigrations(here, [applied('1_records', 'other')])).toThrow(
    /1_records was changed after/,
  )
})

test('a migration that another tool left half done is refused', () => {
  expect(() => pendingMigrations(here, [applied('1_records', '1_records', false)])).toThrow(/never finished/)
})

test('a new migration is named by the moment in UTC and its words', () => {
  const at = new Date('2026-03-01T23:05:09.123+01:00')
  expect(migrationFolder(at, 'Add wear, and tear!')).toBe('20260301220509_add_wear_and_tear')
  expect(() => migrationFolder(at, ' -- ')).toThrow(/needs a name/)
})

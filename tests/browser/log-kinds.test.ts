import { randomUUID } from 'node:crypto'
import type { Page } from 'playwright-core'
import postgres from 'postgres'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { desktop, mishapsOn, phone } from '#tests/support/browser'
import { actAs, choose, fill, freshCode, history, noMishaps, press, told, words } from './steps'

const set = freshCode('KS')
const codes = [`${set}-1`, `${set}-2`]
let sql: postgres.Sql

/** A split mould of two pieces, with one open matter. */
beforeAll(async () => {
  sql = postgres(inject('appDatabase'), { max: 1 })
  const setId = randomUUID()
  await sql`insert into mould_set (id, code, name) values (${setId}, ${set}, 'Test shell')`
  for (const [index, code] of codes.entries()) {
    await sql`
      insert into mould (id, code, name, set_id, piece_no, do_nots)
      values (${randomUUID()}, ${code}, ${`Test shell, piece ${index + 1}`}, ${setId}, ${index + 1}, 'Never with a hammer.')`
  }
})
afterAll(() => sql.end())

const noSideways = async (page: Page) =>
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true)

test('on a phone: one part of a split mould is a pull on each piece, entered once, also by a double click', async () => {
  const page = await phone()
  await actAs(page, 'laminator')
  await page.goto(`/m/${codes[0]}`)
  await page.getByRole('link', { name: /^Pull/ }).click()
  await page.getByText('Never with a hammer.').waitFor()
  expect(await page.getByLabel(/The whole split mould/).isChecked()).toBe(true)
  expect(await words(page.locator('main'))).toContain(`every piece at once: ${codes.join(', ')}`)
  await noSideways(page)
  await fill(page, 'Part serial', `${set}-P1`)
  await page.getByRole('button', { name: 'Write it down' }).dblclick()
  await told(page, 'Written on every piece: Pull, usual')
  for (const code of codes) {
    const pulls = (await history(page, code)).filter((line) => line.includes('Pull, usual'))
    expect(pulls).toHaveLength(1)
    expect(pulls[0]).toContain(`part ${set}-P1`)
  }
  expect(await sql`select 1 from built_part where serial = ${`${set}-P1`}`).toHaveLength(1)

  // The serial a second time: refused with the place, and what was typed stays.
  await page.goto(`/moulds/${codes[1]}/log/pull`)
  await fill(page, 'Part serial', `${set}-P1`)
  await press(page, 'Write it down')
  await told(page, `has given part ${set}-P1 already`)
  expect(await page.getByLabel(/Part serial/).inputValue()).toBe(`${set}-P1`)
  expect(await page.getByLabel(/The whole split mould/).isChecked()).toBe(true)
  noMishaps(mishapsOn(page))
  await page.context().close()
})

test('on a phone: a matter is opened, carried on and closed in two taps each', async () => {
  const page = await phone()
  await actAs(page, 'laminator')
  const code = codes[0] ?? ''
  await page.goto(`/m/${code}`)
  await page.getByText('More…').click()
  await page.getByRole('link', { name: 'Open matter' }).click()
  await fill(page, 'What is to be seen to', 'Order two bushes')
  await fill(page, 'Who sees to it', 'Ravi')
  await fill(page, 'Until', '2026-01-31')
  await press(page, 'Write it down')
  await told(page, 'Written: Open matter, Order two bushes, Ravi, until 31 Jan 2026')
  await told(page, /until 31 Jan( 2026)?, \d+ days over/)
  await noSideways(page)

  await page.getByRole('link', { name: 'Carry on: Order two bushes' }).click()
  await press(page, 'Write it down')
  await told(page, 'Written: Matter carried on')
  expect(await page.getByText('days over').count()).toBe(0)

  await page.getByRole('link', { name: 'Close: Order two bushes' }).click()
  await press(page, 'Write it down')
  await told(page, 'Written: Matter closed')
  expect(await page.getByRole('link', { name: 'Close: Order two bushes' }).count()).toBe(0)
  expect((await history(page, code)).filter((line) => line.includes('Matter'))).toHaveLength(2)
  noMishaps(mishapsOn(page))
  await page.context().close()
})

test('measured points are pasted, told line by line, and open again as they were written', async () => {
  const page = await desktop()
  await actAs(page, 'laminator')
  const code = codes[1] ?? ''
  await page.goto(`/moulds/${code}/log`)
  await page.getByRole('link', { name: /^Measured points/ }).click()
  await fill(page, 'Measured with', 'measuring arm')
  await page.getByLabel(/^Points/).fill('tag; x; y\nD01; 130,02; 360\nD02; 640.06; quite far')
  await page.getByText('2 points read.').waitFor()
  await press(page, 'Write it down')
  await told(page, /Line 3, y: /)
  await page.getByLabel(/^Points/).fill('D01; 130,02; 360\nD02; 640.06; 235; 1/2 in')
  await press(page, 'Write it down')
  await told(page, 'Written: 2 points measured')
  await page.getByRole('link', { name: /^Put right: 2 points measured/ }).click()
  expect(await page.getByLabel(/^Points/).inputValue()).toBe('D01; 130.02; 360\nD02; 640.06; 235; 12.7')
  noMishaps(mishapsOn(page))
  await page.context().close()
})

test('a session that ends while a form is open: what was typed stays, and is sent after signing in again', async () => {
  const page = await desktop()
  await actAs(page, 'laminator')
  const code = codes[1] ?? ''
  await page.goto(`/moulds/${code}/log/note`)
  await fill(page, 'Note', 'typed before the session ended')
  const cookies = await page.context().cookies()
  await page.context().clearCookies()
  await press(page, 'Write it down')
  await told(page, 'You are signed out. What you typed is still here')
  expect(await page.getByLabel('Note', { exact: true }).inputValue()).toBe('typed before the session ended')
  await page.context().addCookies(cookies)
  await press(page, 'Write it down')
  await told(page, 'Written: Note')
  await page.context().close()
})

test('the address of a form leads back to it after the sign-in', async () => {
  const page = await desktop()
  await page.goto(`/moulds/${codes[0]}/log/repair?area=x`)
  expect(new URL(page.url()).searchParams.get('to')).toBe(`/moulds/${codes[0]}/log/repair?area=x`)
  await page.context().close()
})

test('a repair for the time being asks for its limit, and stands among the open matters of the Bench', async () => {
  const page = await desktop()
  await actAs(page, 'lead')
  const code = codes[0] ?? ''
  await page.goto(`/moulds/${code}/log/repair`)
  await fill(page, 'What was repaired, and with what', 'Chip filled for now')
  await page.getByLabel(/^For the time being/).check()
  await press(page, 'Write it down')
  await told(page, 'needs a limit')
  await fill(page, 'For so many pulls', '3')
  await press(page, 'Write it down')
  await told(page, 'for the time being: for 3 pulls')
  await page.goto('/')
  const line = page.locator('.matter-line', { hasText: 'Chip filled for now' })
  await line.getByRole('link', { name: /^Close/ }).click()
  await choose(page, 'It is', 'closed: done')
  await press(page, 'Write it down')
  await told(page, 'Written: Matter closed')
  noMishaps(mishapsOn(page))
  await page.context().close()
})

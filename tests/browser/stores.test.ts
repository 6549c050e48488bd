import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import type { Actor } from '#lib/schema/actor'
import { benchPlan, signPlan } from '#lib/services/patch-steps'
import { sketchPatch } from '#lib/services/patches'
import { closeDatabase, db } from '#lib/store/db'
import { becausesOf, planOf, sketch } from '#tests/store/patch-book'
import { desktop, mishapsOn, phone } from '#tests/support/browser'
import {
  actAs,
  addMould,
  choose,
  field,
  fill,
  freshCode,
  noMishaps,
  pick,
  press,
  stamp,
  told,
  words,
} from './steps'

/** A script that acts on the app's own shop, for what other tests do by hand. */
const rig: Actor = { id: null, name: 'Rig', role: 'lead' }

beforeAll(() => {
  process.env.DATABASE_URL = inject('appDatabase')
})
afterAll(closeDatabase)

/** Receives a lot of what stands under this name in Stores, and answers the address of its page. */
async function receives(
  page: Page,
  what: RegExp,
  lot: string,
  amount: [label: string, text: string],
): Promise<string> {
  await page.goto('/stores')
  await page.getByRole('link', { name: 'Receive a lot' }).click()
  await page.getByRole('heading', { level: 1, name: 'What has come?' }).waitFor()
  await page.getByRole('link', { name: what }).click()
  await fill(page, 'Lot or batch number', lot)
  await fill(page, ...amount)
  await page.getByRole('button', { name: 'Receive it' }).dblclick()
  await page.getByRole('heading', { level: 1, name: `Lot ${lot}` }).waitFor()
  return page.url()
}

/** What stands under a small heading of the title strip. */
async function strip(page: Page, label: string): Promise<string> {
  return words(page.locator('.strip > div', { hasText: label }).locator('b'))
}

/** A patch of this mould on the bench with all its lines ticked; its address. */
async function onBench(code: string): Promise<string> {
  const { sql } = db()
  const [row] = await sql`
    select m.id as mould, a.id as area from mould m join face_area a on a.mould_id = m.id where m.code = ${code}`
  const opening = {
    kind: 'circle',
    diameterMm: 60,
    placement: { shiftMm: [600, 400], turnDeg: 0, mirrored: false },
  }
  const { planId, patchId } = await sketchPatch(
    rig,
    sketch(row?.mould as string, row?.area as string, { opening: opening as never }),
  )
  const version = async () => (await planOf(patchId, planId)).version
  await signPlan(rig, { planId, sawVersion: await version(), becauses: await becausesOf(patchId, planId) })
  await benchPlan(rig, { planId, sawVersion: await version() })
  await sql`update job_line set ticked_by_name = 'Rig', ticked_at = now(), tick_note = 'SL' where plan_id = ${planId}`
  return `/patches/${patchId}`
}

test('a roll is received by its length, laid into a patch to its end, told, and closed', async () => {
  const page = await desktop()
  await actAs(page, 'lead')
  const code = freshCode('ST')
  const [surface, bulk] = [freshCode('S2'), freshCode('B6')]
  await addMould(page, code)
  // 2 m of a roll of 1250 mm are 2.5 m².
  const roll = await receives(page, /^S200/, surface, ['Length of the roll', '2'])
  expect(await strip(page, 'Left by the book')).toBe('2.5 m²')
  await receives(page, /^B650/, bulk, ['or its area', '50'])

  await page.goto(await onBench(code))
  await told(page, /Needs .* m²; in the stores: .* m² fit for use in \d lots/)
  await pick(page, 'Surface twill 200 from the stores', `S200, lot ${surface}`)
  await pick(page, 'Bulk twill 650 from the stores', `B650, lot ${bulk}`)
  await page.getByLabel('Area taken m²').first().fill('2.6')
  await press(page, 'Write it down as laid')
  await told(page, `S200, lot ${surface} has 2.5 m² left by the book; 2.6 m² can't be taken from it`)
  await page.getByLabel('Area taken m²').first().fill('2,5')
  await press(page, 'Write it down as laid')
  await page.getByRole('button', { name: 'Write it down as proved' }).waitFor()

  await page.goto(roll)
  expect(await strip(page, 'Left by the book')).toBe('0 m²')
  expect(await stamp(page)).toBe('Empty')
  expect(await words(page.locator('section', { hasText: 'Where it went' }).first())).toContain(
    `${code}, patch 1`,
  )
  await page.goto('/stores')
  await told(page, `S200 Surface twill 200, lot ${surface}`)
  await page.goto(roll)
  await page.getByText('Close it', { exact: true }).click()
  await press(page, 'Close the lot')
  await page.getByRole('button', { name: 'Open it again' }).waitFor()
  expect(await stamp(page)).toMatch(/^Closed ?used up/)
  await page.goto('/stores')
  expect(await page.getByRole('link', { name: new RegExp(surface) }).count()).toBe(0)
  noMishaps(mishapsOn(page))
  await page.context().close()
}, 150_000)

test('on a phone: a tin is received, coated from, counted, struck, and told on the Bench when it is late', async () => {
  const page = await phone()
  await actAs(page, 'laminator')
  const lot = freshCode('A')
  const tin = await receives(page, /^Semi-permanent agent A/, lot, ['How much came', '500 ml'])
  expect(await strip(page, 'Left by the book')).toBe('0.5 l')

  await page.goto('/moulds/NC-1/log/coat?from=m')
  await fill(page, 'Coats', '1')
  await pick(page, 'Lot from the stores', `Semi-permanent agent A, lot ${lot}`)
  await page.getByLabel(/^Taken/).fill('0.2')
  await page.getByRole('button', { name: 'Write it down' }).dblclick()
  await told(page, /^Written/)
  await page.goto(tin)
  expect(await strip(page, 'Left by the book')).toBe('0.3 l')
  expect(await strip(page, 'Good until')).not.toBe('no date')
  expect(await words(page.locator('section', { hasText: 'Where it went' }).first())).toContain('NC-1')

  await fill(page, 'How much', '0,25')
  await fill(page, 'For what', 'spilt')
  await page.getByRole('button', { name: 'Take it' }).dblclick()
  await expect.poll(() => strip(page, 'Left by the book'), { timeout: 15_000 }).toBe('0.05 l')
  await page.getByRole('link', { name: 'strike out' }).click()
  await fill(page, 'Because', 'it was another tin')
  await press(page, 'Strike it out')
  await expect.poll(() => strip(page, 'Left by the book'), { timeout: 15_000 }).toBe('0.3 l')
  await fill(page, 'How much', '1')
  await press(page, 'Take it')
  await told(page, 'has 0.3 l left by the book')
  expect(await field(page, 'How much').inputValue()).toBe('1')

  await page.getByRole('link', { name: 'Change it' }).click()
  await fill(page, 'Came on', '2026-01-10')
  await fill(page, 'Opened on', '')
  await fill(page, 'Good until', '2026-02-01')
  await press(page, 'Save')
  await page.getByRole('heading', { level: 1, name: `Lot ${lot}` }).waitFor()
  expect(await stamp(page)).toBe('Late')
  await page.goto('/')
  await told(page, `Semi-permanent agent A, lot ${lot}`)
  await page.goto(tin)
  await page.getByText('Close it', { exact: true }).click()
  await choose(page, 'Because it is', 'thrown away')
  await press(page, 'Close the lot')
  await page.getByRole('button', { name: 'Open it again' }).waitFor()
  noMishaps(mishapsOn(page))
  await page.context().close()
}, 120_000)

test('a price is typed as it is read, put right from the same day, and holds from its day', async () => {
  const page = await desktop()
  await actAs(page, 'lead')
  await page.goto('/stores/products')
  await page.getByRole('link', { name: 'Breather cloth W' }).click()
  await page.getByRole('heading', { level: 1, name: 'Breather cloth W' }).waitFor()
  const next = async (text: string, from: string) => {
    if (!(await field(page, /^Price a/).isVisible()))
      await page.getByText('A new price, or put one right').click()
    await fill(page, /^Price a/, text)
    await page.getByLabel('From', { exact: true }).fill(from)
    await press(page, 'Write the price down')
  }
  await next('1.255', '2026-03-16')
  await told(page, 'EUR has 2 decimals')
  await next('125', '2026-03-16')
  await page.getByRole('cell', { name: '€125.00' }).waitFor()
  await next('1,25', '2026-03-16')
  await page.getByRole('cell', { name: '€1.25' }).waitFor()
  expect(await words(page.locator('#prices s'))).toBe('€125.00')
  for (const [day, price] of [
    ['2026-03-15', '–'],
    ['2026-03-16', '€1.25 / m²'],
  ] as const) {
    await page.goto(`/stores/prices?on=${day}`)
    const row = page.getByRole('row', { name: /Breather cloth W/ })
    expect(await row.getByRole('cell').nth(1).textContent()).toBe(price)
  }
  await page.context().close()
}, 60_000)

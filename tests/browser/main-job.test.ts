import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, inject, test } from 'vitest'
import { desktop, mishapsOn, phone } from '#tests/support/browser'
import { addMould, choose, fill, freshCode, history, noMishaps, press, stamp, told, words } from './steps'

const cutout = join(process.cwd(), 'tests/cases/T20a-dxf-bulges/cutout.dxf')

describe.each([
  ['at a desk', desktop],
  ['on a phone', phone],
] as const)('the main job %s', (_where, open) => {
  test('from the sign-in over a pull and a patch to the proved mould', async () => {
    const page = await open()
    const code = freshCode('MJ')
    await signInByForm(page)
    await addMould(page, code)
    await logsOnePullByDoubleClick(page, code)
    const plan = await plansFromDxf(page, code)
    await signs(page)
    await bothSheetsAreThere(page, plan)
    await laysIt(page)
    await pointsAreSettledForAProofPull(page, code)
    await provesIt(page, plan)
    await page.goto(`/moulds/${code}`)
    expect(await stamp(page)).toBe('Fit for use')
    noMishaps(mishapsOn(page))
    await page.context().close()
  }, 200_000)
})

async function signInByForm(page: Page): Promise<void> {
  const lead = inject('appAccounts').find((account) => account.role === 'lead')!
  await page.goto('/moulds')
  await fill(page, 'E-mail', lead.email)
  await fill(page, 'Password', 'not the right one')
  await press(page, 'Sign in')
  await told(page, 'E-mail address and password do not go together')
  expect(await page.getByLabel('E-mail').inputValue()).toBe(lead.email)
  await fill(page, 'Password', lead.password)
  await press(page, 'Sign in')
  await page.getByRole('heading', { name: 'The rack' }).waitFor()
}

async function logsOnePullByDoubleClick(page: Page, code: string): Promise<void> {
  await page.goto(`/m/${code}`)
  await page.getByRole('link', { name: /^Pull/ }).click()
  await choose(page, /How it came out/, 'harder')
  await fill(page, 'Part serial', 'TT-01')
  await page.getByRole('button', { name: 'Write it down' }).dblclick()
  await told(page, 'Written: Pull, harder')
  const pulls = (await history(page, code)).filter((line) => line.includes('Pull, harder'))
  expect(pulls).toHaveLength(1)
  expect(pulls[0]).toContain('part TT-01')
}

/** Answers the address of the plan's page. */
async function plansFromDxf(page: Page, code: string): Promise<string> {
  await page.goto(`/moulds/${code}`)
  await page.getByText('More…').click()
  await page.getByRole('link', { name: 'Plan a patch' }).click()
  await fill(page, 'What it is', 'Crack at the corner')
  await choose(page, 'Worked from', /^against the pattern/)
  await choose(page, 'Opening', /outline from file/)
  await page.getByLabel('File', { exact: true }).setInputFiles(cutout)
  await fill(page, 'Placed at u', '400')
  await fill(page, 'and v', '250')
  await fill(page, /^Measured thickness/, '6,0; 6.1 5.9')
  await page
    .getByText('Stop, look, note')
    .or(page.getByText(/Scarf length/))
    .first()
    .waitFor()
  await press(page, 'Save the sketch')
  await page.getByRole('heading', { level: 1, name: 'Crack at the corner' }).waitFor()
  const text = await words(page.locator('main'))
  // 10 plies for 10 of the stack, over 0.0535 m2 of opening; ratio 20 over the measured 6.0 mm.
  expect(text).toContain('Surface twill 200')
  expect(text).toMatch(/6 \/ 6 mm/)
  expect(await stamp(page)).toBe('Sketched')
  return new URL(page.url()).pathname
}

async function signs(page: Page): Promise<void> {
  await press(page, 'Sign the plan')
  const becauses = page.locator('#steps').getByRole('textbox')
  const count = await becauses.count()
  if (count > 0) {
    await told(page, /Needs a because/)
    for (let index = 0; index < count; index += 1) await becauses.nth(index).fill('looked at and agreed')
    await press(page, 'Sign the plan')
  }
  await page.getByRole('button', { name: 'Put it on the bench' }).waitFor()
  expect(await stamp(page)).toBe('Signed')
  await told(page, 'self-checked')
}

async function bothSheetsAreThere(page: Page, plan: string): Promise<void> {
  for (const name of ['Bench sheet', 'Ply templates 1:1']) {
    const address = await page.getByRole('link', { name }).getAttribute('href')
    expect(address).toContain(plan)
    const answer = await page.request.get(address!)
    expect(answer.headers()['content-type']).toBe('application/pdf')
    const body = await answer.body()
    expect(body.subarray(0, 5).toString()).toBe('%PDF-')
    expect(body.length).toBeGreaterThan(10_000)
  }
}

async function laysIt(page: Page): Promise<void> {
  await press(page, 'Put it on the bench')
  await page.getByRole('button', { name: 'Done: 1', exact: true }).waitFor()
  expect(await stamp(page)).toBe('On the bench')
  await press(page, 'Write it down as laid')
  await told(page, /Give the lot|fields need attention|job lines are open/)
  const titles = await page.locator('.job-lines h3').allInnerTexts()
  const dress = titles.findIndex((title) => /\. Dress$/.test(title))
  expect(dress).toBeGreaterThan(10)
  await tick(page, 1, dress)
  for (const lot of await page.getByLabel(/^Lot of/).all()) await lot.fill('R-118')
  await press(page, 'Write it down as laid')
  await page.getByRole('button', { name: 'Write it down as proved' }).waitFor()
  expect(await stamp(page)).toBe('Laid')
}

/** Ticks the lines from one position to another, both included. */
async function tick(page: Page, from: number, to: number): Promise<void> {
  for (let position = from; position <= to; position += 1) {
    const line = page.locator(`#line-${position}`)
    const second = line.getByLabel('Looked at by')
    if (await second.isVisible()) await second.fill('SL')
    await press(line, `Done: ${position}`)
    await line.getByText(/^Done:.*\d\d:\d\d/).waitFor()
  }
}

async function pointsAreSettledForAProofPull(page: Page, code: string): Promise<void> {
  expect((await history(page, code))[0]).toContain('Patch 1 laid')
  expect(await stamp(page)).toMatch(/^Proof pull only ?Patch 1, floor/)
  await page.goto(`/m/${code}`)
  await page.getByRole('link', { name: 'bare' }).click()
  expect(await page.getByRole('radio', { name: /^Patch 1/ }).isChecked()).toBe(true)
  await fill(page, 'Sealer', 'Base sealer')
  await press(page, 'Write it down')
  await told(page, /Written: 2 × sealer/)
  await page.getByRole('link', { name: '4 more coats' }).click()
  await fill(page, 'Coats', '4')
  await fill(page, 'Release agent', 'Semi-permanent agent')
  await press(page, 'Write it down')
  await told(page, /Written: 4 coats/)
  await page.getByRole('link', { name: 'tape test' }).click()
  await press(page, 'Write it down')
  await told(page, 'Written: Tape slips')

  await page.goto(`/m/${code}`)
  await page.getByRole('link', { name: /^Clear to lay up/ }).click()
  await press(page, 'Clear for a proof pull')
  await told(page, 'Written: Cleared for a proof pull')
  expect(await stamp(page)).toMatch(/^Part in it/)
  await page.goto(`/m/${code}`)
  await page.getByRole('link', { name: /^Pull/ }).click()
  await press(page, 'Write it down')
  await told(page, 'Written: Pull, usual')
}

async function provesIt(page: Page, plan: string): Promise<void> {
  await page.goto(plan)
  const lines = await page.locator('.job-lines > li').count()
  const done = await page.locator('.job-lines > li.done').count()
  await tick(page, done + 1, lines)
  await press(page, 'Write it down as proved')
  await told(page, /^Proved: the patch is part of the mould/)
  expect(await stamp(page)).toBe('Proved')
}

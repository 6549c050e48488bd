import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { desktop, phone } from '#tests/support/browser'
import { actAs } from './steps'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What a person would stumble over: serious and critical findings, and a page wider than its window. */
async function faults(page: Page, address: string): Promise<string[]> {
  await page.goto(address)
  await page.evaluate(axe)
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
  )
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  return [
    ...violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${address}: ${id}, ${nodes[0]?.html.slice(0, 160)}`),
    ...(wide > 0 ? [`${address}: ${wide} px wider than the window`] : []),
  ]
}

/** Where the first link of this name on a page leads. */
async function linkOn(page: Page, address: string, name: RegExp): Promise<string> {
  await page.goto(address)
  return (await page.getByRole('link', { name }).first().getAttribute('href')) ?? ''
}

async function screens(page: Page): Promise<{ main: string[]; others: string[] }> {
  const [bench, signed, laid] = [
    await linkOn(page, '/patches?state=on%20the%20bench', /^Patch/),
    await linkOn(page, '/patches?state=signed', /^Patch/),
    await linkOn(page, '/patches?state=laid', /^Patch/),
  ]
  const sketched = await linkOn(page, '/patches?state=sketched', /^Patch/)
  const material = await linkOn(page, '/stores/materials', /^S200/)
  const stack = await linkOn(page, '/stores/stacks', /^M181/)
  const product = await linkOn(page, '/stores/products', /^Semi-permanent/)
  const lot = await linkOn(page, '/stores', /^B6-/)
  const area = await linkOn(page, '/moulds/LH-P', /Change the area/)
  return {
    main: ['/', '/moulds', '/moulds/LH-P', '/m/NC-1', bench, '/moulds/NC-1/log/pull'],
    others: [
      '/moulds?find=none-such',
      '/moulds/none-such',
      '/moulds/LH-P?view=back',
      '/moulds/new',
      '/moulds/LH-P/edit',
      '/moulds/LH-P/points',
      area,
      ...['cleared', 'coat', 'leak-check', 'tape-test', 'inspection', 'damage', 'dowel-changed', 'state'].map(
        (kind) => `/moulds/NC-1/log/${kind}`,
      ),
      '/patches',
      '/patches/new',
      '/patches/new?mould=LH-P',
      sketched,
      signed,
      laid,
      '/patterns',
      '/stores',
      ...['materials', 'products', 'prices', 'rates', 'stacks', 'lots/new'].map((part) => `/stores/${part}`),
      material,
      `${material}/edit`,
      product,
      `${product}/edit`,
      lot,
      `${lot}/edit`,
      `${material.replace('materials/', 'lots/new?material=')}`,
      stack,
      '/people',
      '/settings',
    ],
  }
}

describe.each([
  ['at a desk', desktop],
  ['on a phone', phone],
] as const)('every screen %s', (_where, open) => {
  test('has no serious fault for those who see or handle it otherwise', async () => {
    const page = await open()
    expect(await faults(page, '/sign-in')).toEqual([])
    await actAs(page, 'lead')
    const { main, others } = await screens(page)
    const found: string[] = []
    for (const address of [...main, ...others]) found.push(...(await faults(page, address)))
    await page.emulateMedia({ colorScheme: 'dark' })
    for (const address of main) found.push(...(await faults(page, address)).map((line) => `dark ${line}`))
    expect(found).toEqual([])
    await page.context().close()
  }, 120_000)
})

test('at the mould every act is a target for a gloved finger', async () => {
  const page = await phone()
  await actAs(page, 'laminator')
  await page.goto('/m/NC-1')
  const acts = page.getByRole('navigation', { name: 'Write down' }).locator('a:visible, summary')
  const heights = await acts.evaluateAll((nodes) => nodes.map((node) => node.getBoundingClientRect().height))
  expect(heights.length).toBeGreaterThanOrEqual(6)
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(48)
  await page.goto('/moulds/NC-1/log/pull?from=m')
  const targets = page.locator('main .choices label, main .btn')
  const sizes = await targets.evaluateAll((nodes) => nodes.map((node) => node.getBoundingClientRect().height))
  expect(Math.min(...sizes)).toBeGreaterThanOrEqual(48)
})

test('a pull is logged by keyboard alone', async () => {
  const page = await desktop()
  await actAs(page, 'laminator')
  await page.goto('/moulds/WS-L/log/pull')
  await page.getByRole('radio', { name: 'usual' }).focus()
  await page.keyboard.press('ArrowRight')
  expect(await page.getByRole('radio', { name: 'harder' }).isChecked()).toBe(true)
  await page.keyboard.press('Tab')
  await page.keyboard.type('KEY-1')
  await page.keyboard.press('Enter')
  await page.locator('[role=status]', { hasText: 'Written: Pull, harder' }).waitFor()
})

import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { basename, dirname, join } from 'node:path'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { logKinds } from '#lib/core/log/index'
import { desktop, phone } from '#tests/support/browser'
import { actAs } from './steps'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What a person would stumble over: serious and critical findings in both schemes, and a page wider than its window. */
async function faults(page: Page, address: string): Promise<string[]> {
  await page.emulateMedia({ colorScheme: 'light' })
  await page.goto(address)
  await page.evaluate(axe)
  const light = await serious(page, null)
  // The schemes differ in their colours alone.
  await page.emulateMedia({ colorScheme: 'dark' })
  const dark = await serious(page, ['color-contrast'])
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  return [
    ...[...light, ...dark.map((line) => `dark, ${line}`)].map((line) => `${address}: ${line}`),
    ...(wide > 0 ? [`${address}: ${wide} px wider than the window`] : []),
  ]
}

/** The rule and the place of each serious finding; `rules` null: all of them. */
async function serious(page: Page, rules: readonly string[] | null): Promise<string[]> {
  const { violations } = await page.evaluate(
    (only) =>
      (globalThis as unknown as { axe: { run: (options: object) => Promise<AxeResults> } }).axe.run(
        only === null ? {} : { runOnly: only },
      ),
    rules,
  )
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}, ${nodes[0]?.html.slice(0, 160)}`)
}

/** Where the first link of this name on a page leads. */
async function linkOn(page: Page, address: string, name: RegExp): Promise<string> {
  await page.goto(address)
  const link = page.getByRole('link', { name }).first()
  const href = await link.getAttribute('href', { timeout: 5000 }).catch(() => null)
  if (href === null) throw new Error(`${address} has no link ${name}`)
  return href
}

/** Addresses that show every page of the shop, by the page's folder; a page that is not here fails the test below. */
async function addresses(page: Page): Promise<Readonly<Record<string, readonly string[]>>> {
  const plan = (state: string) => linkOn(page, `/patches?state=${encodeURIComponent(state)}`, /^Patch/)
  const [onBench, signed, laid, sketched] = [
    await plan('on the bench'),
    await plan('signed'),
    await plan('laid'),
    await plan('sketched'),
  ]
  const area = await linkOn(page, '/moulds/LH-P', /Change the area/)
  const material = await linkOn(page, '/stores/materials', /^S200/)
  const stack = await linkOn(page, '/stores/stacks', /^M181/)
  const product = await linkOn(page, '/stores/products', /^Semi-permanent/)
  const lot = await linkOn(page, '/stores', /^B6-/)
  const set = await linkOn(page, '/sets', /^LH/)
  const built = await linkOn(page, '/parts', /^LH-/)
  const picture = await linkOn(page, '/pictures/all', /./)
  return {
    '': ['/'],
    find: ['/find', '/find?q=hull', '/find?q=none-such-at-all', '/find?q=helll'],
    'm/[code]': ['/m/NC-1', '/m/LH-P'],
    matters: ['/matters', '/matters?page=99'],
    moulds: ['/moulds', '/moulds?find=none-such'],
    'moulds/[code]': ['/moulds/LH-P', '/moulds/LH-P?view=back', '/moulds/LH-P?area=all', '/moulds/none-such'],
    'moulds/[code]/areas/[id]': [area],
    'moulds/[code]/edit': ['/moulds/LH-P/edit'],
    'moulds/[code]/log': ['/moulds/NC-1/log'],
    'moulds/[code]/log/[kind]': logKinds
      .filter((kind) => !['patch-laid', 'proved', 'correction', 'settled'].includes(kind))
      .map((kind) => `/moulds/${['pull', 'cleared'].includes(kind) ? 'LH-P' : 'NC-1'}/log/${kind}`),
    'moulds/[code]/points': ['/moulds/LH-P/points'],
    'moulds/new': ['/moulds/new'],
    out: ['/out'],
    parts: ['/parts'],
    'parts/built/[serial]': [built],
    'parts/built/[serial]/edit': [`${built}/edit`],
    patches: ['/patches'],
    'patches/[id]': [onBench, signed, laid, sketched],
    'patches/new': ['/patches/new', '/patches/new?mould=LH-P'],
    patterns: ['/patterns'],
    'patterns/[code]': ['/patterns/LH-PAT'],
    'patterns/[code]/edit': ['/patterns/LH-PAT/edit'],
    'patterns/[code]/log': ['/patterns/LH-PAT/log'],
    'patterns/[code]/log/[kind]': ['/patterns/LH-PAT/log/re-machined', '/patterns/LH-PAT/log/measured'],
    'patterns/new': ['/patterns/new'],
    people: ['/people'],
    'people/leave-demo': ['/people/leave-demo'],
    'pictures/[id]': [picture],
    'pictures/add': [await linkOn(page, '/moulds/LH-P', /[Aa]dd (a )?(photo|picture)/)],
    'pictures/all': ['/pictures/all'],
    'pictures/mould/[code]': ['/pictures/mould/LH-P'],
    'pictures/views': ['/pictures/views'],
    sets: ['/sets'],
    'sets/[code]': [set],
    'sets/[code]/edit': [`${set}/edit`],
    'sets/new': ['/sets/new'],
    settings: ['/settings'],
    stores: ['/stores'],
    'stores/lots/[id]': [lot],
    'stores/lots/[id]/edit': [`${lot}/edit`],
    'stores/lots/new': ['/stores/lots/new', material.replace('materials/', 'lots/new?material=')],
    'stores/materials': ['/stores/materials'],
    'stores/materials/[id]': [material],
    'stores/materials/[id]/edit': [`${material}/edit`],
    'stores/materials/new': ['/stores/materials/new'],
    'stores/prices': ['/stores/prices'],
    'stores/products': ['/stores/products'],
    'stores/products/[id]': [product],
    'stores/products/[id]/edit': [`${product}/edit`],
    'stores/products/new': ['/stores/products/new'],
    'stores/rates': ['/stores/rates'],
    'stores/stacks': ['/stores/stacks'],
    'stores/stacks/[id]': [stack],
  }
}

test('no page of the shop is forgotten here', async () => {
  const page = await desktop()
  await actAs(page, 'lead')
  const pages = readdirSync(join(process.cwd(), 'app/(shop)'), { recursive: true, encoding: 'utf8' })
    .filter((file) => basename(file) === 'page.tsx')
    .map((file) => dirname(file).replaceAll('\\', '/').replace(/^\.$/, ''))
  expect(Object.keys(await addresses(page)).sort()).toEqual(pages.sort())
  await page.context().close()
})

/** At 200 % a desk's window shows half as much of a page. */
async function doubled(): Promise<Page> {
  const page = await desktop()
  await page.setViewportSize({ width: 680, height: 450 })
  return page
}

describe.each([
  ['at a desk', desktop],
  ['at 200 %', doubled],
  ['on a phone', phone],
] as const)('every screen %s', (_where, open) => {
  test('has no serious fault for those who see or handle it otherwise', async () => {
    const page = await open()
    const found = await faults(page, '/sign-in')
    await actAs(page, 'lead')
    for (const address of Object.values(await addresses(page)).flat())
      found.push(...(await faults(page, address)))
    expect(found).toEqual([])
    await page.context().close()
  }, 400_000)
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

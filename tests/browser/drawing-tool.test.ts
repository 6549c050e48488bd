import type { Locator, Page } from 'playwright-core'
import postgres from 'postgres'
import { describe, expect, inject, test } from 'vitest'
import { desktop, mishapsOn } from '#tests/support/browser'
import { actAs, addMould, choose, fill, freshCode, noMishaps, press, told, words } from './steps'

/** What of an outline is stored with a plan. */
interface StoredOpening {
  readonly kind: string
  readonly name: string
  readonly points: readonly (readonly [number, number])[]
  readonly placement: {
    readonly shiftMm: readonly number[]
    readonly turnDeg: number
    readonly mirrored: boolean
  }
}

/** The opening of the plan whose page is open. */
async function storedOpening(page: Page): Promise<StoredOpening> {
  const patchId = new URL(page.url()).pathname.split('/').at(-1)!
  const sql = postgres(inject('appDatabase'), { max: 1 })
  try {
    const [row] = await sql`select opening from patch_plan where patch_id = ${patchId}`
    return row!.opening as StoredOpening
  } finally {
    await sql.end()
  }
}

/** A new sketch on a fresh mould with a floor of 1200 by 800 mm, its opening to be drawn. */
async function startDrawing(page: Page, title: string): Promise<Locator> {
  await actAs(page, 'lead')
  const code = freshCode('DT')
  await addMould(page, code)
  await page.goto(`/patches/new?mould=${code}`)
  await fill(page, 'What it is', title)
  await choose(page, 'Worked from', /^against the pattern/)
  await fill(page, /^Measured thickness/, '6')
  await choose(page, 'Opening', 'drawn on the face')
  const canvas = page.getByRole('application', { name: 'Draw the opening on floor' })
  await canvas.waitFor()
  await canvas.scrollIntoViewIfNeeded()
  return canvas
}

/** Where on the screen a point of the face lies. The frame of the floor's grid is what the drawing is measured by. */
async function onScreen(canvas: Locator, u: number, v: number): Promise<readonly [number, number]> {
  return canvas.locator('svg').evaluate(
    (svg, [atU, atV]) => {
      const drawing = svg as unknown as SVGSVGElement
      // The boundary is the one thick line: 1200 by 800 mm from (0, 0).
      const boundary = [...drawing.querySelectorAll('path')]
        .map((path) => path.getBBox())
        .find((box) => Math.abs(box.width - 1200) < 0.01 && Math.abs(box.height - 800) < 0.01)
      if (!boundary) throw new Error('no boundary of 1200 by 800 mm on the drawing')
      const { x, y } = new DOMPoint(boundary.x + atU, boundary.y + boundary.height - atV).matrixTransform(
        drawing.getScreenCTM()!,
      )
      return [x, y] as const
    },
    [u, v] as const,
  )
}

async function pressAt(page: Page, canvas: Locator, u: number, v: number): Promise<void> {
  const [x, y] = await onScreen(canvas, u, v)
  await page.mouse.move(x, y)
  await page.mouse.click(x, y)
}

async function saved(page: Page, title: string): Promise<StoredOpening> {
  await press(page, 'Save the sketch')
  await page.getByRole('heading', { level: 1, name: title }).waitFor()
  return storedOpening(page)
}

describe('an opening drawn on the face', () => {
  test('by mouse: caught by the grid, dragged, undone, put right by figures, and stored as it was drawn', async () => {
    const page = await desktop()
    const canvas = await startDrawing(page, 'Drawn by mouse')
    // Each lies a few mm off a crossing of the grid's lines, and is caught by it.
    for (const [u, v] of [
      [302, 203],
      [602, 198],
      [597, 403],
      [303, 402],
    ] as const) {
      await pressAt(page, canvas, u, v)
    }
    const [x, y] = await onScreen(canvas, 601, 403)
    await page.mouse.move(x, y)
    await canvas.getByText(/grid line/).waitFor()
    await pressAt(page, canvas, 300, 200)
    const u2 = page.getByLabel('u of corner 2', { exact: true })
    expect(await u2.inputValue()).toBe('600')

    const [fromX, fromY] = await onScreen(canvas, 600, 200)
    const [toX, toY] = await onScreen(canvas, 700, 200)
    await page.mouse.move(fromX, fromY)
    await page.mouse.down()
    await page.mouse.move((fromX + toX) / 2, toY, { steps: 4 })
    await page.mouse.move(toX, toY, { steps: 4 })
    await page.mouse.up()
    expect(await u2.inputValue()).toBe('700')
    await canvas.press('Control+z')
    expect(await u2.inputValue()).toBe('600')
    await press(page, 'Redo')
    expect(await u2.inputValue()).toBe('700')

    await u2.fill('24 1/2 in')
    await u2.press('Enter')
    expect(await u2.inputValue()).toBe('622.3')
    await page.getByLabel('v of corner 3', { exact: true }).fill('1,234')
    await page.getByLabel('v of corner 3', { exact: true }).press('Tab')
    await told(page, /can be 1234 or 1.234/)
    await page.getByLabel('v of corner 3', { exact: true }).fill('410,5')
    await page.getByLabel('v of corner 3', { exact: true }).press('Tab')

    // Across the far edge it crosses itself, and says so before anything is sent.
    const u4 = page.getByLabel('u of corner 4', { exact: true })
    await u4.fill('900')
    await u4.press('Enter')
    await told(page, /crosses itself at/)
    await press(page, 'Undo')
    await page.getByText(/crosses itself at/).waitFor({ state: 'hidden' })

    const opening = await saved(page, 'Drawn by mouse')
    expect(opening).toMatchObject({
      kind: 'outline',
      name: 'drawn on the face',
      points: [
        [300, 200],
        [622.3, 200],
        [600, 410.5],
        [300, 400],
      ],
      placement: { shiftMm: [0, 0], turnDeg: 0, mirrored: false },
    })
    noMishaps(mishapsOn(page))
    await page.context().close()
  }, 120_000)

  test('by keyboard alone, and changed again from where it stood', async () => {
    const page = await desktop()
    const canvas = await startDrawing(page, 'Drawn by keys')
    await canvas.focus()
    const go = async (keys: readonly (readonly [string, number])[]) => {
      for (const [key, times] of keys) for (let i = 0; i < times; i += 1) await page.keyboard.press(key)
    }
    // The cursor begins in the middle of the face, at (600, 400).
    await go([
      ['Enter', 1],
      ['Shift+ArrowRight', 12],
      ['ArrowRight', 3],
      ['Alt+ArrowRight', 4],
      ['Enter', 1],
    ])
    await go([
      ['Shift+ArrowUp', 9],
      ['Enter', 1],
      ['Shift+ArrowRight', 2],
      ['Enter', 1],
      ['Backspace', 1],
    ])
    await go([
      ['Shift+ArrowLeft', 14],
      ['ArrowLeft', 3],
      ['Alt+ArrowLeft', 4],
      ['Enter', 1],
    ])
    await go([['c', 1]])
    await told(page, 'Closed.')
    const measures = await words(page.locator('main dl').filter({ hasText: 'Round it' }))
    // 123.4 by 90 mm.
    expect(measures).toContain('426.8 mm')
    expect(measures).toContain('111.1 cm²')

    // Another shape is looked at and left again: what was drawn is still there.
    await choose(page, 'Opening', 'round')
    await canvas.waitFor({ state: 'hidden' })
    await choose(page, 'Opening', 'drawn on the face')
    expect(await page.getByLabel('u of corner 2', { exact: true }).inputValue()).toBe('723.4')

    const opening = await saved(page, 'Drawn by keys')
    expect(opening.points).toEqual([
      [600, 400],
      [723.4, 400],
      [723.4, 490],
      [600, 490],
    ])
    const address = page.url()
    const again = await page.getByRole('link', { name: /[Nn]ew version/ }).getAttribute('href')
    await page.goto(again!)
    expect(await page.getByRole('radio', { name: 'drawn on the face' }).isChecked()).toBe(true)
    expect(await page.getByLabel('v of corner 4', { exact: true }).inputValue()).toBe('490')
    await page.goto(address)
    noMishaps(mishapsOn(page))
    await page.context().close()
  }, 120_000)
})

describe('a mould\u2019s drawing', () => {
  test('zooms by buttons and keys, names the place under the pointer, and opens nothing when it is dragged', async () => {
    const page = await desktop()
    await actAs(page, 'lead')
    const code = freshCode('DV')
    await addMould(page, code)
    await page.goto(`/moulds/${code}`)
    const drawing = page.getByRole('group', { name: /^DT|^DV/ })
    await drawing.waitFor()
    const window = () => drawing.locator('svg').getAttribute('viewBox')
    const whole = await window()
    await press(page, 'Zoom in')
    expect(await window()).not.toBe(whole)
    await drawing.focus()
    const before = await window()
    await page.keyboard.press('ArrowRight')
    expect(await window()).not.toBe(before)
    await page.keyboard.press('0')
    expect(await window()).toBe(whole)
    const box = (await drawing.boundingBox())!
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await page.getByText(/^floor [A-Z]\d+ · u \d/).waitFor()
    // Plain scrolling stays with the page.
    const from = await page.evaluate(() => scrollY)
    await page.mouse.wheel(0, 240)
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(from)
    expect(await window()).toBe(whole)
    await page.goto(`/moulds/${code}?view=back`)
    await page.getByText('Seen from the back, mirrored').first().waitFor()
    await page.getByText('Print…').click()
    const sheet = await page.getByRole('link', { name: 'Mould sheet on A4' }).getAttribute('href')
    const answer = await page.request.get(sheet!)
    expect(answer.headers()['content-type']).toBe('application/pdf')
    expect((await answer.body()).subarray(0, 5).toString()).toBe('%PDF-')
    noMishaps(mishapsOn(page))
    await page.context().close()
  }, 120_000)
})

import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { sharp } from '#lib/exchange/picture/sharp.js'
import { desktop, mishapsOn, phone } from '#tests/support/browser'
import { actAs, addMould, fill, freshCode, noMishaps, press, told } from './steps'

const upright = readFileSync('tests/cases/T50a-photo-exif-rotation/upright.jpg')
const heic = readFileSync('tests/cases/T51a-photo-type-heic-and-wrong-names/photo1.jpg')
const jpeg = (buffer: Buffer, name = 'IMG_0001.jpg') => ({ name, mimeType: 'image/jpeg', buffer })

/** A photo as a phone held upright stores it: lying pixels, a tag that turns them, a place. */
async function phonePhoto(): Promise<Buffer> {
  const cell = (background: string) => ({
    create: { width: 800, height: 600, channels: 3 as const, background },
  })
  return sharp(cell('#ffffff'))
    .composite([
      {
        input: await sharp({ create: { width: 400, height: 300, channels: 3, background: '#1010e0' } })
          .png()
          .toBuffer(),
        left: 0,
        top: 0,
      },
      {
        input: await sharp({ create: { width: 400, height: 300, channels: 3, background: '#e01010' } })
          .png()
          .toBuffer(),
        left: 400,
        top: 0,
      },
    ])
    .jpeg({ quality: 92 })
    .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 3/1 3230/100' } })
    .withMetadata({ orientation: 8 })
    .toBuffer()
}

async function addPage(page: Page, code: string): Promise<void> {
  await page.goto(`/moulds/${code}`)
  const block = page.locator('section', { has: page.getByRole('heading', { name: 'Photos and drawings' }) })
  await block.getByRole('link', { name: 'Add a photo' }).click()
  await page.getByRole('heading', { level: 1, name: `Add photos to ${code}` }).waitFor()
  // The script has taken the form over when a click without files is answered in place.
  await press(page, 'Send')
  await told(page, 'Choose a photo or a drawing first.')
}

const choose = (page: Page, ...files: { name: string; mimeType: string; buffer: Buffer }[]) =>
  page.getByLabel('Choose photos or a drawing').setInputFiles(files)

/** Colours on the screen itself, at the corners of the picture. */
async function shownCorners(page: Page, alt: RegExp): Promise<{ box: number[]; colours: string[] }> {
  const image = page.getByRole('img', { name: alt })
  await image.scrollIntoViewIfNeeded()
  await image.evaluate((node: HTMLImageElement) => node.decode())
  const { data, info } = await sharp(await image.screenshot({ type: 'png' }))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true })
  const at = (x: number, y: number) => {
    const start = (Math.floor(y * info.height) * info.width + Math.floor(x * info.width)) * 3
    const [r = 0, g = 0, b = 0] = data.subarray(start, start + 3)
    if (r > 200 && g > 200 && b > 200) return 'white'
    return r > g && r > b ? 'red' : g > r && g > b ? 'green' : 'blue'
  }
  const size = await image.boundingBox()
  return {
    box: [size?.width ?? 0, size?.height ?? 0],
    colours: [at(0.2, 0.2), at(0.8, 0.2), at(0.2, 0.8), at(0.8, 0.8)],
  }
}

test('a photo from a phone held upright stands upright, small and full, without its place', async () => {
  const page = await phone()
  await actAs(page, 'lead')
  const code = freshCode('PIC')
  await addMould(page, code)
  await addPage(page, code)
  expect(await page.getByLabel('Take a photo').getAttribute('capture')).toBe('environment')
  await choose(page, jpeg(await phonePhoto()), jpeg(upright, 'two.HEIC'))
  await fill(page, 'Caption', 'corner')
  await press(page, 'Send')
  await told(page, '2 of 2 kept.')
  await page.getByRole('link', { name: `Back to ${code}` }).click()
  await page.getByRole('link', { name: 'All 2 photos and drawings' }).click()
  await page.getByRole('heading', { level: 1, name: 'Photos and drawings' }).waitFor()
  expect(await page.getByRole('img', { name: /corner$/ }).count()).toBe(2)
  const addresses = await page
    .locator('figure a')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''))
  const shown: string[][] = []
  for (const address of addresses) {
    await page.goto(address)
    const { box, colours } = await shownCorners(page, /corner$/)
    const [width = 0, height = 0] = box
    expect(height, address).toBeGreaterThan(width)
    expect(width).toBeLessThanOrEqual(390)
    shown.push(colours)
    const bytes = await (await page.request.get(`${address}/full`)).body()
    const { exif, orientation } = await sharp(bytes).metadata()
    expect({ exif, orientation }).toEqual({ exif: undefined, orientation: undefined })
  }
  // Turned a quarter to the left: what lay at the top right is now at the top left.
  expect(shown).toContainEqual(['red', 'white', 'blue', 'white'])
  expect(shown).toContainEqual(['red', 'green', 'blue', 'white'])
  noMishaps(mishapsOn(page))
  await page.context().close()
})

test('HEIC is refused with advice, the others go in, and a click too many stores nothing twice', async () => {
  const page = await desktop()
  await actAs(page, 'lead')
  const code = freshCode('PIC')
  await addMould(page, code)
  await addPage(page, code)
  await choose(page, jpeg(heic, 'holiday.jpg'), jpeg(upright, 'good.jpg'))
  await page.getByRole('button', { name: 'Send', exact: true }).dblclick()
  await told(page, '1 of 2 kept.')
  await told(page, /This is a HEIC photo.*JPEG/)
  await page.goto(`/pictures/mould/${code}`)
  expect(await page.locator('figure').count()).toBe(1)
  await page.context().close()
})

test('a lost connection keeps the files; sent again, each is stored once', async () => {
  const page = await desktop()
  await actAs(page, 'lead')
  const code = freshCode('PIC')
  await addMould(page, code)
  await addPage(page, code)
  await choose(page, jpeg(upright, 'one.jpg'), jpeg(upright, 'two.jpg'))
  // The first is stored, and its answer is lost; the second doesn't get through.
  let calls = 0
  await page.route('**/pictures/send', async (route) => {
    calls += 1
    if (calls === 1) await route.fetch()
    await route.abort()
  })
  await press(page, 'Send')
  await told(page, 'Not all of them came through.')
  await page.unroute('**/pictures/send')
  await press(page, 'Send again')
  await told(page, '2 of 2 kept.')
  await page.goto(`/pictures/mould/${code}`)
  expect(await page.locator('figure').count()).toBe(2)
  await page.context().close()
})

test('without script: several files, one of them HEIC, each told on the page; sent twice, stored once', async () => {
  const desk = await desktop()
  await actAs(desk, 'lead')
  const code = freshCode('PIC')
  await addMould(desk, code)
  const context = await desk
    .context()
    .browser()!
    .newContext({ baseURL: inject('appUrl'), javaScriptEnabled: false })
  await context.addCookies(await desk.context().cookies())
  const page = await context.newPage()
  await page.goto(`/moulds/${code}`)
  await page.getByRole('link', { name: 'Add a photo' }).first().click()
  await choose(page, jpeg(upright, 'one.jpg'), jpeg(heic, 'two.jpg'))
  await page.getByRole('button', { name: 'Send', exact: true }).dblclick()
  await told(page, '1 file kept')
  await told(page, /^two\.jpg: This is a HEIC photo/)
  await page.goto(`/pictures/mould/${code}`)
  expect(await page.locator('figure').count()).toBe(1)
  await context.close()
  await desk.context().close()
})

test('two days of a fixed view are stepped through by keyboard', async () => {
  const page = await desktop()
  await actAs(page, 'viewer')
  await page.goto('/pictures/mould/LH-P')
  expect(await page.getByRole('link', { name: 'Add a photo' }).count()).toBe(0)
  await page.getByRole('link', { name: 'Same view over time' }).click()
  await page.getByRole('heading', { level: 1, name: 'floor from the front' }).waitFor()
  const days = () => page.locator('.pair-side h2').allInnerTexts()
  const [left, right] = await days()
  await page.getByRole('link', { name: 'earlier on the left' }).focus()
  await page.keyboard.press('Enter')
  await page.waitForURL(/left=/)
  await expect.poll(days).toEqual([expect.not.stringMatching(left!), right])
  expect(await page.getByRole('link', { name: 'earlier on the left' }).count()).toBe(0)
  noMishaps(mishapsOn(page))
  await page.context().close()
})

import { sharp } from '#lib/exchange/picture/sharp.js'

/** Pictures made for tests: four quarters, red and green above, blue and white below. */

export const colours = { red: '#e01010', green: '#10c010', blue: '#1010e0', white: '#ffffff' } as const

/** The quarters as raw pixels that an encoder starts from. */
export async function quarters(widthPx = 120, heightPx = 80) {
  const [w, h] = [widthPx / 2, heightPx / 2]
  const cell = (background: string) => ({ create: { width: w, height: h, channels: 3 as const, background } })
  const { data, info } = await sharp({
    create: { width: widthPx, height: heightPx, channels: 3, background: colours.white },
  })
    .composite([
      { input: cell(colours.red), left: 0, top: 0 },
      { input: cell(colours.green), left: w, top: 0 },
      { input: cell(colours.blue), left: 0, top: h },
    ])
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true })
  return sharp(data, { raw: { width: info.width, height: info.height, channels: 3 } })
}

export const own = (bytes: Uint8Array): Uint8Array<ArrayBuffer> => new Uint8Array(bytes)

function named([r = 0, g = 0, b = 0]: readonly number[]): string {
  if (r > 180 && g > 180 && b > 180) return 'white'
  if (r > 120 && g < 110 && b < 110) return 'red'
  if (g > 120 && r < 110 && b < 110) return 'green'
  if (b > 120 && r < 110 && g < 110) return 'blue'
  return `${r} ${g} ${b}`
}

/** The colours of the four corners by name, each taken some way in. */
export async function corners(bytes: Uint8Array): Promise<Record<string, string>> {
  const { data, info } = await sharp(bytes).toColourspace('srgb').raw().toBuffer({ resolveWithObject: true })
  const at = (x: number, y: number) => {
    const start = (Math.floor(y * info.height) * info.width + Math.floor(x * info.width)) * info.channels
    return named([...data.subarray(start, start + 3)])
  }
  return {
    top_left: at(0.15, 0.15),
    top_right: at(0.85, 0.15),
    bottom_left: at(0.15, 0.85),
    bottom_right: at(0.85, 0.85),
  }
}

/** A file of the boxed family that says no more than its brands. */
export function boxed(major: string, ...compatible: string[]): Uint8Array<ArrayBuffer> {
  const brands = compatible.join('')
  const size = 16 + brands.length
  const head = `\0\0\0${String.fromCharCode(size)}ftyp${major}\0\0\0\0${brands}`
  return own(Buffer.from(`${head}${'\0'.repeat(64)}`, 'latin1'))
}

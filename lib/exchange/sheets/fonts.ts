import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { sfntOfWoff } from './woff'

/** Fonts of the sheets: complete WOFF files, since the WOFF2 and the split ones don't serve the PDF writer. */
export const sheetFonts = {
  regular: 'plex-sans/fonts/complete/woff/IBMPlexSans-Regular.woff',
  semibold: 'plex-sans/fonts/complete/woff/IBMPlexSans-SemiBold.woff',
  mono: 'plex-mono/fonts/complete/woff/IBMPlexMono-Regular.woff',
} as const
export type SheetFont = keyof typeof sheetFonts

const loaded = new Map<SheetFont, Buffer>()

/**
 * The font, read and unpacked once for the process. Looked for in node_modules of the working directory and above: inside
 * a bundled server neither import.meta.url nor require.resolve point to the package. Error naming the file and
 * the cure when it is missing.
 */
export function fontFile(font: SheetFont): Buffer {
  const known = loaded.get(font)
  if (known) return known
  const path = findFont(sheetFonts[font], process.cwd())
  // Without the mark the bundler takes the whole checkout for files that this may read.
  const file = sfntOfWoff(readFileSync(/* turbopackIgnore: true */ path))
  loaded.set(font, file)
  return file
}

function findFont(path: string, start: string): string {
  for (let folder = start; ; folder = dirname(folder)) {
    const candidate = join(folder, 'node_modules', '@ibm', path)
    if (existsSync(/* turbopackIgnore: true */ candidate)) return candidate
    if (dirname(folder) === folder) break
  }
  throw new Error(
    `The font @ibm/${path} was not found in node_modules of ${start} or above. Run the set-up again (npm ci).`,
  )
}

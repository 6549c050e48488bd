/** What a file is by its content; its name and what a browser says of it don't count. */
export type PictureContent =
  | 'jpeg'
  | 'png'
  | 'webp'
  | 'gif'
  | 'avif'
  | 'tiff'
  | 'pdf'
  | 'heic'
  | 'heif'
  | 'camera-raw'
  | 'bmp'
  | 'svg'
  | 'jpeg-xl'
  | 'jpeg-2000'
  | 'photoshop'
  | 'film'
  | 'page'
  | 'archive'
  | 'unknown'

const signatures: readonly (readonly [PictureContent, number, string])[] = [
  ['jpeg', 0, '\xff\xd8\xff'],
  ['png', 0, '\x89PNG\r\n\x1a\n'],
  ['gif', 0, 'GIF87a'],
  ['gif', 0, 'GIF89a'],
  ['tiff', 0, 'II*\0'],
  ['tiff', 0, 'MM\0*'],
  ['tiff', 0, 'II+\0'],
  ['tiff', 0, 'MM\0+'],
  ['bmp', 0, 'BM'],
  ['jpeg-xl', 0, '\xff\x0a'],
  ['jpeg-xl', 4, 'JXL \r\n\x87\n'],
  ['jpeg-2000', 4, 'jP  \r\n\x87\n'],
  ['jpeg-2000', 0, '\xff\x4f\xff\x51'],
  ['photoshop', 0, '8BPS'],
  ['camera-raw', 0, 'FUJIFILMCCD-RAW'],
  ['camera-raw', 0, 'IIRO'],
  ['camera-raw', 0, 'IIU\0'],
  ['film', 0, '\x1aE\xdf\xa3'],
  ['archive', 0, 'PK\x03\x04'],
  ['archive', 0, '\x1f\x8b'],
]

/** Bytes as signs of the same numbers, so that signatures read as they are published. */
function signs(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, to))
}

/** The kind of a file, from its first bytes. */
export function pictureContent(bytes: Uint8Array): PictureContent {
  const head = signs(bytes, 0, 1024)
  const found = signatures.find(([, at, signature]) => head.startsWith(signature, at))
  if (found?.[0] === 'tiff') return isCameraRaw(bytes) ? 'camera-raw' : 'tiff'
  if (found?.[0] === 'bmp') return isBitmap(bytes) ? 'bmp' : 'unknown'
  if (found) return found[0]
  if (head.startsWith('RIFF')) return head.startsWith('WEBP', 8) ? 'webp' : 'film'
  if (head.startsWith('ftyp', 4)) return byBrands(bytes)
  // Readers of PDF look for its mark within the first 1024 bytes.
  if (head.includes('%PDF-')) return 'pdf'
  return byText(bytes)
}

const heicBrands = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'hevm', 'hevs'])
const avifBrands = new Set(['avif', 'avis', 'avio'])
const heifBrands = new Set(['mif1', 'msf1', 'mif2', 'miaf'])

/** The boxed family (ISO/IEC 14496-12): the major brand, then those that it is compatible with. */
function byBrands(bytes: Uint8Array): PictureContent {
  const size = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0)
  const end = Math.min(Math.max(size, 16), bytes.length, 512)
  const brands = [signs(bytes, 8, 12)]
  for (let at = 16; at + 4 <= end; at += 4) brands.push(signs(bytes, at, at + 4))
  const [major = ''] = brands
  if (avifBrands.has(major)) return 'avif'
  if (heicBrands.has(major)) return 'heic'
  if (major === 'crx ') return 'camera-raw'
  if (brands.some((brand) => heicBrands.has(brand))) return 'heic'
  if (brands.some((brand) => avifBrands.has(brand))) return 'avif'
  return brands.some((brand) => heifBrands.has(brand)) ? 'heif' : 'film'
}

/** "BM" also begins many a text: the size of the header that follows must be one that exists. */
function isBitmap(bytes: Uint8Array): boolean {
  if (bytes.length < 18) return false
  const header = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(14, true)
  return [12, 16, 40, 52, 56, 64, 108, 124].includes(header)
}

const newSubfileType = 254
const dngVersion = 50706

/**
 * Raw files of cameras are TIFF outside; a TIFF reader would find the thumbnail. Told by the mark "CR", by the
 * version of the open raw format, or by a first picture that calls itself a reduced one.
 */
function isCameraRaw(bytes: Uint8Array): boolean {
  if (signs(bytes, 8, 10) === 'CR') return true
  const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const little = bytes[0] === 0x49
  if (bytes.length < 10) return false
  const first = data.getUint32(4, little)
  if (first + 2 > bytes.length) return false
  const count = data.getUint16(first, little)
  for (let entry = 0; entry < count; entry += 1) {
    const at = first + 2 + entry * 12
    if (at + 12 > bytes.length) return false
    const tag = data.getUint16(at, little)
    if (tag === dngVersion) return true
    if (tag === newSubfileType && (data.getUint32(at + 8, little) & 1) === 1) return true
  }
  return false
}

function byText(bytes: Uint8Array): PictureContent {
  // A wider reach than for signatures: comments and a document type may come before the first element.
  const wide = bytes.subarray(0, 4096)
  const text = new TextDecoder(encodingOf(wide))
    .decode(wide)
    .replace(/<!--[\s\S]*?-->/g, '')
    .trimStart()
    .toLowerCase()
  if (!text.startsWith('<')) return 'unknown'
  if (/<([\w-]+:)?svg[\s/>]/.test(text)) return 'svg'
  return /<(!doctype html|html|head|body|script)\b/.test(text) ? 'page' : 'unknown'
}

/** By the byte order mark, or by the zero that UTF-16 has beside a "<". */
function encodingOf([first, second]: Uint8Array): string {
  if ((first === 0xff && second === 0xfe) || (first === 0x3c && second === 0)) return 'utf-16le'
  if ((first === 0xfe && second === 0xff) || (first === 0 && second === 0x3c)) return 'utf-16be'
  return 'utf-8'
}

/** Whether a PNG has the chunk of an animation before its first picture. */
export function isMovingPng(bytes: Uint8Array): boolean {
  const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  for (let at = 8; at + 8 <= bytes.length; ) {
    const name = signs(bytes, at + 4, at + 8)
    if (name === 'acTL') return true
    if (name === 'IDAT') return false
    at += 12 + data.getUint32(at)
  }
  return false
}

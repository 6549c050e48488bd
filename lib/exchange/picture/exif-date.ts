import { type IsoDate, isIsoDate } from '#lib/core/dates'

const exifPointer = 0x8769
const takenTag = 0x9003
const digitisedTag = 0x9004
const asciiType = 2

/**
 * The day on the camera's own clock when a photo was taken, from its block of EXIF; null when it tells none, or one
 * that its clock can't mean: before 1990 or no date at all.
 *
 * Source: Exif 2.3, DateTimeOriginal (0x9003) and DateTimeDigitized (0x9004), "YYYY:MM:DD HH:MM:SS".
 */
export function exifDay(block: Uint8Array): IsoDate | null {
  const start = tiffStart(block)
  if (start === null) return null
  const tiff = block.subarray(start)
  const data = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength)
  const little = tiff[0] === 0x49
  const first = directory(data, little, data.getUint32(4, little))
  const pointer = first.get(exifPointer)
  if (pointer === undefined) return null
  const exif = directory(data, little, data.getUint32(pointer + 8, little))
  for (const tag of [takenTag, digitisedTag]) {
    const day = dayAt(data, little, exif.get(tag))
    if (day !== null) return day
  }
  return null
}

/** Where the TIFF header is: at once, or after "Exif" and two zeros. */
function tiffStart(block: Uint8Array): number | null {
  for (const start of [0, 6]) {
    const mark = String.fromCharCode(...block.subarray(start, start + 4))
    if ((mark === 'II*\0' || mark === 'MM\0*') && block.length >= start + 8) return start
  }
  return null
}

/** Tag -> place of its twelve bytes. A directory that points out of the block is empty. */
function directory(data: DataView, little: boolean, at: number): Map<number, number> {
  const entries = new Map<number, number>()
  if (at + 2 > data.byteLength) return entries
  const count = data.getUint16(at, little)
  for (let index = 0; index < count; index += 1) {
    const entry = at + 2 + index * 12
    if (entry + 12 > data.byteLength) break
    entries.set(data.getUint16(entry, little), entry)
  }
  return entries
}

function dayAt(data: DataView, little: boolean, entry: number | undefined): IsoDate | null {
  if (entry === undefined || data.getUint16(entry + 2, little) !== asciiType) return null
  const at = data.getUint32(entry + 8, little)
  if (at + 10 > data.byteLength) return null
  const text = String.fromCharCode(...new Uint8Array(data.buffer, data.byteOffset + at, 10))
  const day = /^\d{4}[:-]\d{2}[:-]\d{2}$/.test(text) ? text.replaceAll(':', '-') : ''
  return isIsoDate(day) && day >= '1990-01-01' ? day : null
}

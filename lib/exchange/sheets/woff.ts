import { inflateSync } from 'node:zlib'

/**
 * Unpacks a WOFF 1.0 file (W3C recommendation, 2012) to the plain font inside it. The PDF writer reads WOFF too, but
 * inflates it in JavaScript for each document: about a second for the three fonts of a sheet. Tables stay in the
 * file's order and 4-byte aligned; checksums are copied. RangeError for bytes that are no WOFF.
 */
export function sfntOfWoff(woff: Buffer): Buffer {
  if (woff.length < 44 || woff.readUInt32BE(0) !== 0x774f4646) throw new RangeError('not a WOFF file')
  const count = woff.readUInt16BE(12)
  const tables = Array.from({ length: count }, (_, i) => readTable(woff, 44 + 20 * i))
  const head = Buffer.alloc(12 + 16 * count)
  woff.copy(head, 0, 4, 8)
  const exponent = Math.floor(Math.log2(count))
  head.writeUInt16BE(count, 4)
  head.writeUInt16BE(16 * 2 ** exponent, 6)
  head.writeUInt16BE(exponent, 8)
  head.writeUInt16BE(16 * (count - 2 ** exponent), 10)
  const parts: Buffer[] = [head]
  let offset = head.length
  for (const [i, { tag, checksum, data }] of tables.entries()) {
    const entry = 12 + 16 * i
    head.writeUInt32BE(tag, entry)
    head.writeUInt32BE(checksum, entry + 4)
    head.writeUInt32BE(offset, entry + 8)
    head.writeUInt32BE(data.length, entry + 12)
    const padding = Buffer.alloc((4 - (data.length % 4)) % 4)
    parts.push(data, padding)
    offset += data.length + padding.length
  }
  return Buffer.concat(parts)
}

function readTable(woff: Buffer, entry: number): { tag: number; checksum: number; data: Buffer } {
  const start = woff.readUInt32BE(entry + 4)
  const packedLength = woff.readUInt32BE(entry + 8)
  const length = woff.readUInt32BE(entry + 12)
  const packed = woff.subarray(start, start + packedLength)
  const data = packedLength < length ? inflateSync(packed) : packed
  if (data.length !== length) throw new RangeError(`WOFF table of ${length} bytes unpacked to ${data.length}`)
  return { tag: woff.readUInt32BE(entry), checksum: woff.readUInt32BE(entry + 16), data }
}

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pictureContent } from '#lib/exchange/picture/index'
import { boxed, own, quarters } from './paint'

const text = (value: string) => own(Buffer.from(value, 'utf8'))
const latin = (value: string) => own(Buffer.from(value, 'latin1'))

describe('the kind of a file by its content', () => {
  test.each(['jpeg', 'png', 'webp', 'gif', 'avif', 'tiff'] as const)(
    '%s as an encoder makes it',
    async (format) => {
      expect(pictureContent(own(await (await quarters()).toFormat(format).toBuffer()))).toBe(format)
    },
  )

  test.each([
    ['heic', boxed('heic', 'mif1', 'heic')],
    ['heic', boxed('heix', 'mif1')],
    ['heic', boxed('hevc', 'msf1')],
    ['heic', boxed('mif1', 'mif1', 'heic')],
    ['heic', boxed('msf1', 'hevx')],
    ['heif', boxed('mif1', 'mif1', 'miaf')],
    ['avif', boxed('avif', 'mif1', 'miaf')],
    ['avif', boxed('avis', 'msf1')],
    ['avif', boxed('mif1', 'avif', 'miaf')],
    ['camera-raw', boxed('crx ', 'isom')],
    ['film', boxed('isom', 'mp42')],
    ['film', boxed('qt  ')],
    ['film', latin('RIFF\0\0\0\0AVI LIST')],
    ['film', latin('\x1aE\xdf\xa3\0\0\0\0')],
    ['bmp', latin(`BM\0\0\0\0\0\0\0\0\x36\0\0\0\x28\0\0\0${'\0'.repeat(40)}`)],
    ['unknown', text('BM 4 mould, notes of the walk')],
    ['svg', text('<svg xmlns="http://www.w3.org/2000/svg"/>')],
    ['svg', text('\ufeff<?xml version="1.0"?>\n<!-- a drawing --><!DOCTYPE svg>\n<svg width="1"/>')],
    ['svg', own(Buffer.from('\ufeff<?xml version="1.0" encoding="utf-16"?><svg/>', 'utf16le'))],
    ['svg', own(Buffer.from('<?xml version="1.0"?><svg/>', 'utf16le'))],
    ['svg', text('<x:svg xmlns:x="http://www.w3.org/2000/svg"/>')],
    ['page', text('<!DOCTYPE html><body>GIF89a</body>')],
    ['pdf', text('%PDF-1.7\n')],
    ['pdf', text(`${' '.repeat(900)}%PDF-1.4\n`)],
    ['unknown', text(`${' '.repeat(1100)}%PDF-1.4\n`)],
    ['jpeg-xl', latin('\xff\x0a\xfa')],
    ['jpeg-2000', latin('\0\0\0\x0cjP  \r\n\x87\n')],
    ['photoshop', latin('8BPS\0\x01')],
    ['archive', latin('PK\x03\x04')],
    ['unknown', text('hello')],
    ['unknown', latin('\xff\xd8')],
    ['unknown', new Uint8Array()],
  ] as const)('%s', (kind, bytes) => {
    expect(pictureContent(bytes)).toBe(kind)
  })

  /** A TIFF with one directory of one entry. */
  function tiff(tag: number, value: number, little: boolean): Uint8Array<ArrayBuffer> {
    const bytes = new Uint8Array(32)
    const data = new DataView(bytes.buffer)
    bytes.set(Buffer.from(little ? 'II*\0' : 'MM\0*', 'latin1'))
    data.setUint32(4, 8, little)
    data.setUint16(8, 1, little)
    data.setUint16(10, tag, little)
    data.setUint16(12, 4, little)
    data.setUint32(14, 1, little)
    data.setUint32(18, value, little)
    return bytes
  }

  test.each([true, false])('a raw file of a camera is no TIFF (little-endian: %s)', (little) => {
    expect(pictureContent(tiff(254, 1, little))).toBe('camera-raw')
    expect(pictureContent(tiff(50706, 0x01040000, little))).toBe('camera-raw')
    expect(pictureContent(tiff(254, 0, little))).toBe('tiff')
    expect(pictureContent(latin('II*\0\x10\0\0\0CR\x02\0'))).toBe('camera-raw')
  })

  test('any bytes have a kind, whatever they begin with', () => {
    const heads = ['', 'II*\0', 'MM\0*', 'BM', '\0\0\0\x18ftypmif1', 'RIFF', '<svg', '\x89PNG\r\n\x1a\n']
    fc.assert(
      fc.property(fc.constantFrom(...heads), fc.uint8Array({ maxLength: 200 }), (head, rest) => {
        const bytes = own(Buffer.concat([Buffer.from(head, 'latin1'), rest]))
        expect(typeof pictureContent(bytes)).toBe('string')
      }),
      { numRuns: 500 },
    )
  })
})

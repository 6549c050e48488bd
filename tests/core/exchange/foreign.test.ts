import { describe, expect, test } from 'vitest'
import { readOutline } from '#lib/exchange/outline/index'
import { dxf, polyline, read, square } from './draw-dxf'

function bytes(text: string): Uint8Array {
  return Uint8Array.from(text, (sign) => sign.charCodeAt(0))
}

function file(content: string | Uint8Array, name = 'opening') {
  return readOutline({ name, bytes: typeof content === 'string' ? bytes(content) : content, unit: null })
}

describe('files of another kind are refused by what they seem to be', () => {
  test.each([
    ['PDF', '%PDF-1.7\n%\xe2\xe3'],
    ['PNG', '\x89PNG\r\n\x1a\n'],
    ['JPEG', '\xff\xd8\xff\xe0\0\x10JFIF'],
    ['GIF', 'GIF89a'],
    ['TIFF', 'II*\0\x08'],
    ['WebP', 'RIFF\x10\0\0\0WEBPVP8'],
    ['photo', '\0\0\0\x18ftypheic'],
    ['XLSX', `PK\x03\x04\x14\0${'\0'.repeat(30)}[Content_Types].xml PK\x03\x04xl/workbook.xml`],
    ['ZIP', `PK\x03\x04\x14\0${'\0'.repeat(30)}readme.txt`],
    ['archive', '\x1f\x8b\x08\0'],
    ['Office', '\xd0\xcf\x11\xe0\xa1\xb1'],
    ['DWG', 'AC1032\0\0\0'],
    ['binary form', 'AutoCAD Binary DXF\r\n\x1a\0'],
    ['STEP', '\nISO-10303-21;\nHEADER;'],
    ['IGES', `${' '.repeat(72)}S      1\n`],
    ['STL', 'solid part\n facet normal 0 0 1\n'],
    ['web page', '<!DOCTYPE html><html></html>'],
    ['PostScript', '%!PS-Adobe-3.0'],
    ['RTF', '{\\rtf1\\ansi 0,0}'],
    ['UTF-16', '\xff\xfe0\0,\x000\0'],
    ['UTF-16', '\xfe\xff\x000\0,\x000'],
    ['UTF-16', '0\0,\x000\0\n\0'],
    ['binary', '12,5\x00\x01\x02'],
  ])('%s', (kind, content) => {
    const reading = file(content)
    expect(reading).toMatchObject({ verdict: 'refuse', unit: null, loops: [], dropped: 0 })
    expect(reading.findings).toHaveLength(1)
    expect(reading.findings[0]!.text).toContain(kind)
    expect(reading.findings[0]!.cure!.length).toBeGreaterThan(20)
  })

  test.each(['', ' \r\n\t ', '\ufeff'])('nothing in it: %j', (text) => {
    expect(read(text)).toMatchObject({ verdict: 'refuse', findings: [{ code: 'file-empty' }] })
  })

  test('more than 8 MB', () => {
    const reading = file(new Uint8Array(8 * 1024 * 1024 + 1))
    expect(reading).toMatchObject({ verdict: 'refuse', findings: [{ code: 'file-too-large' }] })
    expect(reading.findings[0]!.text).toContain('at most 8 MB')
  })

  test.each([
    ['table.dxf', '0,0\n1,0\n1,1', 'begins with the lines 0 and SECTION'],
    ['drawing.csv', dxf([polyline(square(10))]), 'a DXF'],
    ['drawing.json', dxf([polyline(square(10))]), 'a DXF'],
    ['points.csv', '{"outer": []}', 'JSON'],
    ['picture.svg', '0,0\n1,0\n1,1', 'a table of coordinates'],
    ['Sheet.PDF', dxf([polyline(square(10))]), 'a DXF'],
  ])('%s with another content', (name, content, says) => {
    const reading = read(content, 'mm', name)
    expect(reading).toMatchObject({ verdict: 'refuse', findings: [{ code: 'wrong-ending' }] })
    expect(reading.findings[0]!.text).toContain(says)
  })

  test('endings that promise nothing are read by their content', () => {
    const text = dxf([polyline(square(10))])
    for (const name of ['opening.txt', 'opening', 'pasted', 'opening.dxf.bak', 'opening.DXF']) {
      expect(read(text, null, name).verdict).toBe('accept')
    }
  })

  test('8-bit text of an older program: digits as they are, letters of a layer too', () => {
    const text = dxf([polyline(square(10)), polyline(square(10, [20, 0]))]).replaceAll('CUT', 'Au\xdfen')
    expect(file(text).findings[0]!.text).toContain('Außen')
  })
})

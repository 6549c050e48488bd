import { decodeText } from './decode'
import { Refused, stop } from './finding'
import { beginsAsSvg, foreignKind } from './foreign'
import { mostBytes } from './limits'

export type Content = 'dxf' | 'svg' | 'json' | 'coordinates'

const contentNames: Readonly<Record<Content, string>> = {
  dxf: 'a DXF',
  svg: 'an SVG drawing',
  json: 'JSON',
  coordinates: 'a table of coordinates or other text',
}

/** What an ending promises; other endings promise nothing. */
const promised: Readonly<Record<string, string>> = {
  dxf: 'dxf',
  json: 'json',
  csv: 'coordinates',
  tsv: 'coordinates',
  svg: 'svg',
  pdf: 'PDF',
  png: 'PNG',
  jpg: 'JPEG',
  jpeg: 'JPEG',
  zip: 'ZIP',
  xlsx: 'XLSX',
  xls: 'XLS',
  dwg: 'DWG',
  step: 'STEP',
  stp: 'STEP',
}

/** Text and kind of a file, told by what it holds. Throws Refused on what can't be read here. */
export function sniff(name: string, bytes: Uint8Array): { readonly content: Content; readonly text: string } {
  if (bytes.length > mostBytes) {
    throw new Refused(
      stop(
        'file-too-large',
        `The file has ${(bytes.length / 1024 / 1024).toFixed(1)} MB; at most ${mostBytes / 1024 / 1024} MB are read.`,
        null,
        'Save a drawing that holds nothing but the outline.',
        { bytes: bytes.length, mostBytes },
      ),
    )
  }
  const foreign = foreignKind(bytes)
  if (foreign !== null) {
    throw new Refused(stop('not-an-outline-file', `This seems to be ${foreign.seems}.`, null, foreign.cure))
  }
  const text = decodeText(bytes)
  if (text.trim() === '') {
    throw new Refused(
      stop('file-empty', 'There is nothing in it.', null, 'Save the drawing again, or paste the points.'),
    )
  }
  const content = contentOf(text)
  assertEndingFits(name, content)
  return { content, text }
}

function contentOf(text: string): Content {
  if (beginsAsSvg(text)) return 'svg'
  if (/^\s*(0\s*[\r\n]\s*SECTION\b|999\s*[\r\n])/i.test(text)) return 'dxf'
  return /^\s*[{[]/.test(text) ? 'json' : 'coordinates'
}

function assertEndingFits(name: string, content: Content): void {
  const ending = /\.([a-z0-9]+)$/i.exec(name.trim())?.[1]?.toLowerCase()
  const expected = ending === undefined ? undefined : promised[ending]
  if (expected === undefined || expected === content) return
  const says = `The name ends in .${ending}, but the content seems to be ${contentNames[content]}.`
  throw new Refused(
    expected === 'dxf'
      ? stop(
          'wrong-ending',
          `${says} A DXF begins with the lines 0 and SECTION.`,
          'line 1',
          'Save the drawing again as DXF; or, if it is a table, name it .csv.',
        )
      : stop(
          'wrong-ending',
          says,
          'line 1',
          'Save the outline again as DXF or SVG, or give the file the ending that fits.',
        ),
  )
}

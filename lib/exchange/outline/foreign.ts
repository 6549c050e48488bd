/** What a file seems to be that can't be read here, and what to do instead. */
export interface Foreign {
  readonly seems: string
  readonly cure: string
}

interface Kind extends Foreign {
  /** `head` is the file's first bytes, one character each. */
  readonly matches: (head: string, bytes: Uint8Array) => boolean
}

/** Enough for the comments and declarations that programs put before a drawing. */
const headBytes = 16_384

const saveAsDxf = 'In the drawing program save the outline as DXF in text form (R12 or 2000).'
const saveAsCsv = 'Save the sheet as CSV with two columns u and v, the unit in the header.'
const fromDrawing =
  'Ask for the drawing itself and save its outline as DXF, or type the points as two columns.'

/** File signatures as their formats define them; the order matters where one is part of another. */
const kinds: readonly Kind[] = [
  { seems: 'a PDF', cure: `A PDF keeps no sure scale. ${saveAsDxf}`, matches: begins('%PDF-') },
  { seems: 'a PNG picture', cure: fromDrawing, matches: begins('\x89PNG') },
  { seems: 'a JPEG picture', cure: fromDrawing, matches: begins('\xff\xd8\xff') },
  { seems: 'a GIF picture', cure: fromDrawing, matches: begins('GIF8') },
  { seems: 'a TIFF picture', cure: fromDrawing, matches: (head) => /^(II\*\0|MM\0\*)/.test(head) },
  { seems: 'a WebP picture', cure: fromDrawing, matches: (head) => /^RIFF[\s\S]{4}WEBP/.test(head) },
  {
    seems: 'a phone photo or film',
    cure: fromDrawing,
    matches: (head) => head.slice(4, 8) === 'ftyp',
  },
  {
    seems: 'an Excel workbook (XLSX)',
    cure: saveAsCsv,
    matches: (head, bytes) => head.startsWith('PK\x03\x04') && holds(bytes, 'xl/'),
  },
  {
    seems: 'a ZIP archive',
    cure: 'Unpack it and give the drawing inside.',
    matches: begins('PK\x03\x04', 'PK\x05\x06'),
  },
  {
    seems: 'a packed archive',
    cure: 'Unpack it and give the drawing inside.',
    matches: begins('\x1f\x8b', '7z\xbc\xaf', 'Rar!'),
  },
  { seems: 'an older Office file (XLS or DOC)', cure: saveAsCsv, matches: begins('\xd0\xcf\x11\xe0') },
  { seems: 'a DWG drawing', cure: saveAsDxf, matches: (head) => /^AC(10\d\d|1\.\d|2\.\d)/.test(head) },
  {
    seems: 'a DXF in binary form',
    cure: 'Save it again as DXF in text form (ASCII).',
    matches: begins('AutoCAD Binary DXF'),
  },
  {
    seems: 'a STEP model',
    cure: `A solid model has no single outline. Project the edge of the opening into a sketch. ${saveAsDxf}`,
    matches: (head) => head.trimStart().startsWith('ISO-10303'),
  },
  {
    seems: 'an IGES model',
    cure: saveAsDxf,
    matches: (head) => /^[^\r\n]{72}S[ 0-9]{7}\r?\n/.test(head),
  },
  { seems: 'a mesh (STL)', cure: saveAsDxf, matches: (head) => /^\s*solid\b[^\n]*\n\s*facet\b/.test(head) },
  {
    seems: 'a web page or XML file',
    cure: saveAsDxf,
    matches: (head) => /^\s*<[!?a-z]/i.test(head) && !beginsAsSvg(head),
  },
  { seems: 'a PostScript file', cure: saveAsDxf, matches: begins('%!PS') },
  { seems: 'a formatted letter (RTF)', cure: saveAsCsv, matches: begins('{\\rtf') },
  {
    seems: 'text in UTF-16',
    cure: 'Save it again as UTF-8 (in a spreadsheet: CSV UTF-8) or plain text.',
    matches: (head) => /^(\xff\xfe|\xfe\xff)/.test(head) || everyOtherIsNul(head.slice(0, 8)),
  },
  {
    seems: 'a binary file of an unknown kind',
    cure: saveAsDxf,
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what tells binary from text
    matches: (head) => /[\x00-\x08\x0e-\x19\x1b-\x1f]/.test(head),
  },
]

/**
 * An XML file whose first element seems to be an svg; comments and declarations before it may be long. A web page
 * that holds a drawing is none.
 */
export function beginsAsSvg(text: string): boolean {
  const head = text.slice(0, headBytes)
  if (!/^\s*<(\?xml|!--|!doctype\s+([a-z]+:)?svg\b|([a-z]+:)?svg[\s>/])/i.test(head)) return false
  const start = head.search(/<([a-z]+:)?svg[\s>/]/i)
  return start >= 0 && !/<html[\s>]/i.test(head.slice(0, start))
}

/** Null when the bytes can be text of a kind that is read here. */
export function foreignKind(bytes: Uint8Array): Foreign | null {
  const mark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0
  const head = latin1(bytes.subarray(mark, mark + headBytes))
  return kinds.find((kind) => kind.matches(head, bytes)) ?? null
}

/** English text in UTF-16 without its mark. */
function everyOtherIsNul(head: string): boolean {
  if (head.length < 4) return false
  const signs = [...head]
  return [0, 1].some((odd) => signs.every((sign, index) => (sign === '\0') === (index % 2 === odd)))
}

function begins(...signatures: readonly string[]): Kind['matches'] {
  return (head) => signatures.some((signature) => head.startsWith(signature))
}

/** Whether the first 64 kB hold an ASCII text: names of the parts stand near the start of an archive. */
function holds(bytes: Uint8Array, text: string): boolean {
  return latin1(bytes.subarray(0, 65_536)).includes(text)
}

function latin1(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => String.fromCharCode(byte)).join('')
}

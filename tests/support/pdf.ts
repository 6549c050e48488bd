import { inflateSync } from 'node:zlib'

/** A painted path of a page in points from the page's lower left corner, with all transforms applied. */
export interface PdfPath {
  readonly points: readonly (readonly [number, number])[]
  readonly closed: boolean
  readonly stroked: boolean
  readonly filled: boolean
  readonly lineWidthPt: number
}

/** A run of text with the place where it starts, in points. */
export interface PdfText {
  readonly text: string
  readonly at: readonly [number, number]
  readonly sizePt: number
}

export interface PdfPage {
  readonly widthPt: number
  readonly heightPt: number
  readonly paths: readonly PdfPath[]
  readonly texts: readonly PdfText[]
}

type Matrix = readonly [number, number, number, number, number, number]

interface PdfObject {
  readonly dictionary: string
  readonly stream: Buffer | null
}

/**
 * Reads back a PDF of our own making: page sizes, painted paths and words. It knows what our writer writes (plain
 * objects, deflated content, Identity-H fonts with a ToUnicode map) and no more.
 */
export function readPdf(bytes: Uint8Array): { readonly catalog: string; readonly pages: readonly PdfPage[] } {
  const objects = readObjects(Buffer.from(bytes))
  const catalog = [...objects.values()].find((object) => object.dictionary.includes('/Type /Catalog'))
  if (!catalog) throw new Error('the PDF has no catalog')
  const tree = follow(objects, catalog.dictionary, 'Pages')
  const kids = /\/Kids \[([^\]]*)\]/.exec(tree.dictionary)?.[1] ?? ''
  const pages = [...kids.matchAll(/(\d+) 0 R/g)].map((match) => readPage(objects, get(objects, match[1]!)))
  const preferences = /\/ViewerPreferences (\d+) 0 R/.exec(catalog.dictionary)?.[1]
  return {
    catalog: `${catalog.dictionary} ${preferences ? get(objects, preferences).dictionary : ''}`,
    pages,
  }
}

function readObjects(file: Buffer): Map<string, PdfObject> {
  const text = file.toString('latin1')
  const objects = new Map<string, PdfObject>()
  const start = /(\d+) 0 obj\n/g
  for (let match = start.exec(text); match; match = start.exec(text)) {
    const from = match.index + match[0].length
    const end = text.indexOf('endobj', from)
    const streamAt = text.indexOf('stream\n', from)
    if (streamAt < 0 || streamAt > end) {
      objects.set(match[1]!, { dictionary: text.slice(from, end), stream: null })
      start.lastIndex = end
      continue
    }
    const dictionary = text.slice(from, streamAt)
    const length = Number(/\/Length (\d+)/.exec(dictionary)?.[1])
    const body = file.subarray(streamAt + 7, streamAt + 7 + length)
    const stream = dictionary.includes('/FlateDecode') ? inflateSync(body) : body
    objects.set(match[1]!, { dictionary, stream })
    start.lastIndex = streamAt + 7 + length
  }
  return objects
}

function get(objects: Map<string, PdfObject>, id: string): PdfObject {
  const object = objects.get(id)
  if (!object) throw new Error(`the PDF has no object ${id}`)
  return object
}

function follow(objects: Map<string, PdfObject>, dictionary: string, key: string): PdfObject {
  const id = new RegExp(`/${key} (\\d+) 0 R`).exec(dictionary)?.[1]
  if (!id) throw new Error(`no /${key} in ${dictionary}`)
  return get(objects, id)
}

function readPage(objects: Map<string, PdfObject>, page: PdfObject): PdfPage {
  const box = /\/MediaBox \[([^\]]*)\]/.exec(page.dictionary)?.[1]?.trim().split(/\s+/).map(Number)
  if (box?.length !== 4) throw new Error('a page has no MediaBox')
  const resources = /\/Resources (\d+) 0 R/.exec(page.dictionary)
    ? follow(objects, page.dictionary, 'Resources').dictionary
    : page.dictionary
  const fonts = new Map<string, Map<number, string>>()
  for (const match of resources.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
    const font = get(objects, match[2]!)
    fonts.set(match[1]!, readToUnicode(follow(objects, font.dictionary, 'ToUnicode')))
  }
  const content = follow(objects, page.dictionary, 'Contents').stream?.toString('latin1') ?? ''
  return { widthPt: box[2]!, heightPt: box[3]!, ...paint(content, fonts) }
}

/** Glyph to text, from the bfrange arrays of a ToUnicode map. */
function readToUnicode(object: PdfObject): Map<number, string> {
  const map = new Map<number, string>()
  const text = object.stream?.toString('latin1') ?? ''
  for (const [, from, , list] of text.matchAll(/<([0-9a-f]+)> <([0-9a-f]+)> \[([^\]]*)\]/gi)) {
    let glyph = Number.parseInt(from!, 16)
    for (const [, code] of list!.matchAll(/<([0-9a-f ]*)>/gi)) {
      const units = code!.replaceAll(' ', '').match(/.{4}/g) ?? []
      map.set(glyph, String.fromCharCode(...units.map((unit) => Number.parseInt(unit, 16))))
      glyph += 1
    }
  }
  return map
}

interface GraphicsState {
  matrix: Matrix
  lineWidth: number
}

function paint(content: string, fonts: Map<string, Map<number, string>>) {
  const paths: PdfPath[] = []
  const texts: PdfText[] = []
  const stack: GraphicsState[] = []
  let state: GraphicsState = { matrix: [1, 0, 0, 1, 0, 0], lineWidth: 1 }
  let subpaths: { points: [number, number][]; closed: boolean }[] = []
  let font = new Map<number, string>()
  let textAt: readonly [number, number] = [0, 0]
  let fontSize = 0
  const begin = (x: number, y: number) =>
    subpaths.push({ points: [apply(state.matrix, x, y)], closed: false })
  const add = (x: number, y: number) => subpaths[subpaths.length - 1]?.points.push(apply(state.matrix, x, y))
  const close = () => {
    const last = subpaths[subpaths.length - 1]
    if (last) last.closed = true
  }
  const finish = (stroked: boolean, filled: boolean) => {
    const lineWidthPt = state.lineWidth * scaleOf(state.matrix)
    for (const subpath of subpaths) paths.push({ ...subpath, stroked, filled, lineWidthPt })
    subpaths = []
  }
  for (const { operator, operands } of operations(content)) {
    const n = operands.map(Number)
    if (operator === 'q') stack.push({ ...state })
    else if (operator === 'Q') state = stack.pop() ?? state
    else if (operator === 'cm') state = { ...state, matrix: multiply(n as unknown as Matrix, state.matrix) }
    else if (operator === 'w') state = { ...state, lineWidth: n[0]! }
    else if (operator === 'm') begin(n[0]!, n[1]!)
    else if (operator === 'l') add(n[0]!, n[1]!)
    else if (operator === 'c') add(n[4]!, n[5]!)
    else if (operator === 'h') close()
    else if (operator === 're') {
      begin(n[0]!, n[1]!)
      add(n[0]! + n[2]!, n[1]!)
      add(n[0]! + n[2]!, n[1]! + n[3]!)
      add(n[0]!, n[1]! + n[3]!)
      close()
    } else if (operator === 'S' || operator === 's') finish(true, false)
    else if (operator === 'f' || operator === 'f*') finish(false, true)
    else if (operator === 'B' || operator === 'B*') finish(true, true)
    else if (operator === 'n') subpaths = []
    else if (operator === 'Tm') textAt = apply(state.matrix, n[4]!, n[5]!)
    else if (operator === 'Tf') {
      font = fonts.get(operands[0]!.slice(1)) ?? new Map()
      fontSize = n[1]! * scaleOf(state.matrix)
    } else if (operator === 'TJ') {
      const hex = [...operands[0]!.matchAll(/<([0-9a-f]+)>/gi)].map((match) => match[1]!).join('')
      const text = (hex.match(/.{4}/g) ?? [])
        .map((unit) => font.get(Number.parseInt(unit, 16)) ?? '?')
        .join('')
      texts.push({ text, at: textAt, sizePt: fontSize })
    }
  }
  return { paths, texts }
}

/** Operators with their operands; arrays are kept as one operand. */
function operations(content: string): readonly { operator: string; operands: readonly string[] }[] {
  const found: { operator: string; operands: readonly string[] }[] = []
  let operands: string[] = []
  for (const token of content.match(/\[[^\]]*\]|<[^>]*>|\/[^\s/[\]<>]+|[^\s[\]<>/]+/g) ?? []) {
    if (/^(\[|<|\/|[-+.\d])/.test(token)) operands.push(token)
    else {
      found.push({ operator: token, operands })
      operands = []
    }
  }
  return found
}

function apply([a, b, c, d, e, f]: Matrix, x: number, y: number): [number, number] {
  return [a * x + c * y + e, b * x + d * y + f]
}

function multiply(inner: Matrix, outer: Matrix): Matrix {
  const [a, b, c, d, e, f] = inner
  const [A, B, C, D, E, F] = outer
  return [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F]
}

function scaleOf([a, b]: Matrix): number {
  return Math.hypot(a, b)
}

import PDFDocument from 'pdfkit'
import { type LineStyle, lineTable, type Role } from '#lib/core/drawing/index'
import { fontFile, type SheetFont, sheetFonts } from './fonts'
import { type PaperName, paperSizes } from './paper-sizes'

/** An open PDF whose every page is drawn in millimetres from its top left corner. */
export interface Paper {
  readonly doc: PDFKit.PDFDocument
  /** What it is printed on; pages stand upright or lie across. */
  readonly name: PaperName
  readonly pages: PaperPage[]
}

export interface PaperPage {
  readonly widthMm: number
  readonly heightMm: number
}

export type Orientation = 'portrait' | 'landscape'

export const pointsPerMm = 72 / 25.4

/** Black alone must suffice, so roles differ by line and word; grey only steps back. */
export const inkOf: Readonly<Record<Role, string>> = {
  ink: '#000000',
  soft: '#3d3d3d',
  act: '#000000',
  held: '#000000',
  due: '#000000',
  good: '#000000',
  hair: '#c9c9c9',
}

/** Opens a document. `printedAt` is its only date, so the same model gives the same bytes. */
export function openPaper(title: string, subject: string, printedAt: string, name: PaperName): Paper {
  const printed = new Date(printedAt)
  if (Number.isNaN(printed.getTime())) throw new RangeError(`printedAt must be a moment, got "${printedAt}"`)
  const doc = new PDFDocument({
    autoFirstPage: false,
    bufferPages: true,
    margin: 0,
    lang: 'en-GB',
    pdfVersion: '1.7',
    info: {
      Title: title,
      Subject: subject,
      Creator: 'Mouldwright',
      Producer: 'Mouldwright',
      CreationDate: printed,
      ModDate: printed,
    },
  })
  askForTrueSize(doc)
  for (const font of Object.keys(sheetFonts) as SheetFont[]) doc.registerFont(font, fontFile(font))
  return { doc, name, pages: [] }
}

/** ViewerPreferences are no part of the writer's public face; without them a viewer offers to fit the page. */
function askForTrueSize(doc: PDFKit.PDFDocument): void {
  const root = (doc as unknown as { _root: { data: Record<string, unknown> } })._root
  root.data.ViewerPreferences = doc.ref({ PrintScaling: 'None', DisplayDocTitle: true })
}

/** A page of that paper, upright or lying across. */
export function pageSize(name: PaperName, orientation: Orientation): PaperPage {
  const { widthMm, heightMm } = paperSizes[name]
  return orientation === 'portrait' ? { widthMm, heightMm } : { widthMm: heightMm, heightMm: widthMm }
}

export function addPage(paper: Paper, orientation: Orientation): PaperPage {
  const page = pageSize(paper.name, orientation)
  paper.doc.addPage({ size: [page.widthMm * pointsPerMm, page.heightMm * pointsPerMm], margin: 0 })
  paper.doc.scale(pointsPerMm, pointsPerMm).lineJoin('round')
  paper.pages.push(page)
  return page
}

/** Back to a page for what is known only at the end, like the number of pages. Pages count from 0. */
export function toPage(paper: Paper, index: number): void {
  paper.doc.switchToPage(index)
}

export async function closePaper({ doc }: Paper): Promise<Uint8Array> {
  const chunks: Uint8Array[] = []
  const done = new Promise<void>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    doc.on('end', () => resolve())
    doc.on('error', reject)
  })
  doc.end()
  await done
  return new Uint8Array(Buffer.concat(chunks))
}

export function setStroke(paper: Paper, style: LineStyle, role: Role): void {
  const { widthMm, dash } = lineTable[style]
  paper.doc.lineWidth(widthMm).strokeColor(inkOf[role])
  if (dash.length === 0) paper.doc.undash()
  // The writer takes a list of dashes though its types speak of one.
  else paper.doc.dash(dash.map((part) => part * widthMm) as unknown as number, {})
}

export function rule(
  paper: Paper,
  from: readonly [number, number],
  to: readonly [number, number],
  style: LineStyle = 'thin',
  role: Role = 'ink',
): void {
  setStroke(paper, style, role)
  paper.doc.moveTo(from[0], from[1]).lineTo(to[0], to[1]).stroke()
}

export function rect(
  paper: Paper,
  x: number,
  y: number,
  width: number,
  height: number,
  style: LineStyle = 'thin',
  role: Role = 'ink',
): void {
  setStroke(paper, style, role)
  paper.doc.rect(x, y, width, height).stroke()
}

import sax from 'sax'
import { lineName, Refused, stop } from './finding'

/** An element of the drawing: its name without the prefix of the drawing's own names. */
export interface SvgElement {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: readonly SvgElement[]
  /** Text right inside it, as of a style sheet. */
  readonly text: string
  readonly line: number
}

interface Growing extends SvgElement {
  readonly children: Growing[]
  text: string
}

/** Groups in groups; drawings have ten or twenty. */
const deepest = 200

const mostElements = 100_000

const saveAgain = 'In the drawing program save it again as plain SVG, or as DXF in text form.'

/**
 * The drawing as a tree of elements. Entities that the file defines itself are not read, nothing outside the file is
 * ever fetched. Throws Refused on XML that is damaged, is no SVG, or holds more than a drawing of an outline does.
 */
export function svgRoot(text: string): SvgElement {
  const parser = sax.parser(true)
  const open: Growing[] = []
  const state: { root: Growing | null; prefix: string; count: number } = { root: null, prefix: '', count: 0 }
  const line = () => parser.line + 1
  let startLine = 1
  parser.onopentagstart = () => {
    startLine = line()
  }
  parser.ondoctype = (doctype) => {
    if (/<!ENTITY/i.test(doctype)) throw entities(line())
  }
  parser.onopentag = ({ name, attributes }) => {
    state.count += 1
    if (state.count > mostElements) throw tooMany(`more than ${mostElements} elements`, line())
    if (open.length >= deepest) throw tooMany(`groups nested more than ${deepest} deep`, line())
    if (state.root === null) state.prefix = prefixOf(name, line())
    const element: Growing = {
      name: ownName(name, state.prefix),
      attributes: attributes as Record<string, string>,
      children: [],
      text: '',
      line: startLine,
    }
    if (state.root === null) state.root = element
    else open.at(-1)?.children.push(element)
    open.push(element)
  }
  parser.onclosetag = () => {
    open.pop()
  }
  const addText = (more: string) => {
    const inside = open.at(-1)
    if (inside?.name === 'style') inside.text += more
  }
  parser.ontext = addText
  parser.oncdata = addText
  parser.onerror = (fault) => {
    throw damaged(fault.message, line())
  }
  parser.write(text).close()
  if (state.root === null) throw damaged('There is no element in it.', 1)
  return state.root
}

/** "svg:" where the drawing's own names carry a prefix, else nothing. */
function prefixOf(rootName: string, line: number): string {
  const [, prefix] = /^(?:(.*):)?svg$/.exec(rootName) ?? []
  if (rootName === 'svg' || prefix !== undefined) return prefix === undefined ? '' : `${prefix}:`
  throw new Refused(
    stop(
      'not-an-outline-file',
      `This is XML, but no SVG drawing: its first element is "${rootName.slice(0, 40)}".`,
      lineName(line),
      'In the drawing program save the outline as SVG, or as DXF in text form.',
    ),
  )
}

/** Names of other makers' additions keep their prefix, so that they are never taken for the drawing's own. */
function ownName(name: string, prefix: string): string {
  if (prefix === '') return name
  return name.startsWith(prefix) ? name.slice(prefix.length) : `foreign:${name}`
}

function entities(line: number): Refused {
  return new Refused(
    stop(
      'svg-entities',
      'The file defines entities of its own (<!ENTITY …>), which are not read.',
      lineName(line),
      `${saveAgain} Leave out options that keep the program's own editing data.`,
      { line },
    ),
  )
}

function tooMany(what: string, line: number): Refused {
  return new Refused(
    stop(
      'svg-too-much',
      `The drawing holds ${what}.`,
      lineName(line),
      'Save a drawing that holds nothing but the outline.',
      { line },
    ),
  )
}

function damaged(says: string, line: number): Refused {
  const [reason = ''] = says.split('\n')
  return new Refused(
    stop(
      'svg-damaged',
      `The SVG can't be read as XML: ${reason.slice(0, 120).replace(/\.?$/, '.')}`,
      lineName(line),
      saveAgain,
      { line },
    ),
  )
}

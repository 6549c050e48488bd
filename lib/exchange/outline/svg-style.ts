import type { SvgElement } from './svg-xml'

/** Each style is taken apart once: an element is asked for a dozen properties, and again by every copy. */
const takenApart = new WeakMap<SvgElement, Readonly<Record<string, string>>>()

/** Of an element's own: the style attribute goes before the attribute of that name. Style sheets are not read. */
export function property(element: SvgElement, name: string): string | undefined {
  const known = takenApart.get(element)
  const style = known ?? inlineStyle(element.attributes.style)
  if (!known) takenApart.set(element, style)
  return style[name] ?? element.attributes[name]
}

/** "fill:none; display:none" by name. */
function inlineStyle(style: string | undefined): Readonly<Record<string, string>> {
  if (style === undefined) return {}
  const pairs = style.split(';').flatMap((part): (readonly [string, string])[] => {
    const colon = part.indexOf(':')
    if (colon < 0) return []
    const value = part.slice(colon + 1).replace(/!\s*important\s*$/i, '')
    return [[part.slice(0, colon).trim().toLowerCase(), value.trim()]]
  })
  return Object.fromEntries(pairs)
}

/** Properties by which a style sheet could hide, move or reshape what is drawn. */
const reshaping =
  /(?:^|[{;\s])(display|visibility|transform(?:-\w+)?|translate|rotate|scale|d|cx|cy|r|rx|ry|x|y|width|height|clip-path|mask|offset-path|zoom)\s*:/gi

/** Names of the properties in a style sheet that decide what the outline is, not how it looks. */
export function reshapingProperties(sheet: string): readonly string[] {
  const plain = sheet.replace(/\/\*[\s\S]*?\*\//g, '')
  return [...new Set([...plain.matchAll(reshaping)].map((found) => found[1]!.toLowerCase()))]
}

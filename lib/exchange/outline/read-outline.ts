import { readCoordinates } from './coordinates'
import { readDxf } from './dxf'
import { Refused } from './finding'
import { readJsonOutline } from './json-outline'
import { judge, refusal } from './judge'
import { oneOutline } from './one-outline'
import { sniff } from './sniff'
import { readSvg } from './svg'
import type { OutlineFile, OutlineReading } from './types'

const readers = { svg: readSvg, json: readJsonOutline, coordinates: readCoordinates } as const

/**
 * All closed loops of a DXF in text form, an SVG, a table of coordinates (a CSV or pasted text) or JSON, with the
 * roles that follow from containment; what it is, is told by its content. Loops come in mm. One outline with holes is
 * accepted. Bad input is an answer with the verdict refuse, never an error.
 */
export function readLoops(file: OutlineFile): OutlineReading {
  const bytes = 'bytes' in file ? file.bytes : new TextEncoder().encode(file.text)
  try {
    const { content, text } = sniff(file.name, bytes)
    return judge(
      content === 'dxf' ? readDxf(text, file.unit, file.layers ?? null) : readers[content](text, file.unit),
    )
  } catch (fault) {
    if (fault instanceof Refused) return refusal(fault.findings)
    throw fault
  }
}

/** The same, for what is kept as one loop of points (an opening, a boundary): holes are refused by name. */
export function readOutline(file: OutlineFile): OutlineReading {
  return oneOutline(readLoops(file))
}

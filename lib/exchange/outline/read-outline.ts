import { readCoordinates } from './coordinates'
import { readDxf } from './dxf'
import { Refused } from './finding'
import { readJsonOutline } from './json-outline'
import { judge, refusal } from './judge'
import { sniff } from './sniff'
import type { OutlineFile, OutlineReading } from './types'

const readers = { dxf: readDxf, json: readJsonOutline, coordinates: readCoordinates } as const

/**
 * The outline of an opening from a DXF in text form, a table of coordinates (a CSV or pasted text) or JSON; what it
 * is, is told by its content. Loops come in mm. Bad input is an answer with the verdict refuse, never an error.
 */
export function readOutline(file: OutlineFile): OutlineReading {
  const bytes = 'bytes' in file ? file.bytes : new TextEncoder().encode(file.text)
  try {
    const { content, text } = sniff(file.name, bytes)
    return judge(readers[content](text, file.unit))
  } catch (fault) {
    if (fault instanceof Refused) return refusal(fault.findings)
    throw fault
  }
}

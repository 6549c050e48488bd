import { lineName, Refused, stop } from './finding'

/** One pair of lines of a DXF: a group code and its value. */
export interface Tag {
  readonly code: number
  readonly value: string
  /** Of the value, counted from 1. */
  readonly line: number
}

/**
 * The pairs of a DXF in text form, comments (999) left out. Takes any line ending, blanks round the values and a
 * Ctrl-Z at the end. Throws Refused with the line where no group code stands or the file breaks off inside a pair.
 */
export function* tagsOf(text: string): Generator<Tag> {
  const content = withoutControlZ(text)
  const lines = content.split(content.includes('\n') ? '\n' : '\r')
  let end = lines.length
  while (end > 0 && lines[end - 1]!.trim() === '') end--
  let index = 0
  while (index < end && lines[index]!.trim() === '') index++
  for (; index < end; index += 2) {
    const code = codeOf(lines[index]!.trim(), index + 1)
    const value = lines[index + 1]
    // A value may be blank, also the file's last one.
    if (value === undefined) throw brokenOff(index + 1)
    if (code !== 999) yield { code, value: value.trim(), line: index + 2 }
  }
}

export function brokenOff(line: number): Refused {
  return new Refused(
    stop(
      'file-broken-off',
      'The drawing breaks off here; the rest of the file is missing.',
      lineName(line),
      'Save or copy it again.',
      { line },
    ),
  )
}

function codeOf(text: string, line: number): number {
  if (/^-?\d{1,4}$/.test(text)) return Number(text)
  throw new Refused(
    stop(
      'dxf-code',
      `A group code, a whole number, must stand here; found "${text.slice(0, 40)}".`,
      lineName(line),
      'The file is damaged: save it again as DXF in text form, and do not edit it by hand.',
      { line },
    ),
  )
}

function withoutControlZ(text: string): string {
  const end = text.indexOf('\x1a')
  return end === -1 ? text : text.slice(0, end)
}

import svgpath from 'svgpath'

/** One step of a path in its own coordinates, absolute: where it leads, and over which curve. */
export type SvgSegment =
  | readonly ['M' | 'L', number, number]
  | readonly ['Q', number, number, number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly [
      'A',
      rx: number,
      ry: number,
      turnDeg: number,
      large: number,
      sweep: number,
      x: number,
      y: number,
    ]
  | readonly ['Z']

export type SvgPathData =
  | { readonly ok: true; readonly segments: readonly SvgSegment[] }
  /** Where in the data it can't be read, counted from 1. */
  | { readonly ok: false; readonly at: number }

/** Path data after SVG 1.1, section 8.3: every command as an absolute one, smooth curves with their handles. */
export function pathSegments(data: string): SvgPathData {
  const read = svgpath(data)
  const fault = (read as unknown as { readonly err: string }).err
  if (fault !== '') return { ok: false, at: Number(/at pos (\d+)/.exec(fault)?.[1] ?? 0) + 1 }
  const segments: SvgSegment[] = []
  let strange = false
  read
    .abs()
    .unshort()
    .iterate(([command, ...values], _index, x, y) => {
      const numbers = values as readonly number[]
      if (command === 'H') segments.push(['L', numbers[0]!, y])
      else if (command === 'V') segments.push(['L', x, numbers[0]!])
      else if (known.has(command)) segments.push([command, ...numbers] as unknown as SvgSegment)
      else strange = true
    })
  return strange ? { ok: false, at: data.search(/[rR]/) + 1 } : { ok: true, segments }
}

const known = new Set<string>(['M', 'L', 'Q', 'C', 'A', 'Z'])

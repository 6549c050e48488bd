import type { Bounds, Loop } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'

/** accept: nothing to ask; accept-with-notice: read it, then use it; ask: a person must choose; refuse: can't be used. */
export type Verdict = 'accept' | 'accept-with-notice' | 'ask' | 'refuse'

/** Units that a person can choose for a file. */
export type ChosenUnit = 'mm' | 'cm' | 'm' | 'in'

/** Units that only the page of an SVG is given in. */
export type PageUnit = 'px' | 'pt' | 'pc'

/** Units that a file can state. */
export type FileUnit = ChosenUnit | PageUnit | 'ft' | 'dm' | 'um' | 'mil' | 'thou'

export interface OutlineSource {
  /** Name of the file, or "pasted". */
  readonly name: string
  /** Null: what the file itself says holds. A choice holds against the file, and that is told. */
  readonly unit: ChosenUnit | null
  /** Of a DXF: layers that alone are read, also when they are off or frozen. Without it all that are shown. */
  readonly layers?: readonly string[]
}

/** A layer of a drawing that something lies on. */
export interface LayerFound {
  readonly name: string
  /** Drawn pieces, lettering left out; of a block once for each time that it is placed. */
  readonly pieces: number
  /** Any other than read: its pieces were left out, and why. A layer can be told twice, shown and in a frozen block. */
  readonly state: 'read' | 'off' | 'frozen' | 'not-chosen'
}

/** A file as it came, or text as it was pasted. */
export type OutlineFile = OutlineSource & ({ readonly bytes: Uint8Array } | { readonly text: string })

export interface LoopReading {
  readonly role: 'outer' | 'hole'
  /**
   * mm, arcs flattened within 0.005 mm; an outer loop runs counter-clockwise, a hole clockwise. A loop that crosses
   * itself stays in the order of the file, in which an offered order counts its points.
   */
  readonly points: Loop
  /** Of a loop that crosses itself: all that it encloses, each lobe counted once. */
  readonly areaMm2: number
  readonly perimeterMm: number
  readonly boundsMm: Bounds
}

export interface OutlineReading {
  readonly verdict: Verdict
  /** Found in the file or chosen; null when nothing tells it, and then the loops are given as if in mm. */
  readonly unit: FileUnit | null
  /** Largest first. Also given with a refusal that stands on the loops themselves, so that they can be shown. */
  readonly loops: readonly LoopReading[]
  /** How many drawn pieces were left out because they lie on another one or have no length. */
  readonly dropped: number
  /** Of a DXF that could be gone through: in the order in which something was found on them. */
  readonly layers?: readonly LayerFound[]
  readonly findings: readonly Finding[]
}

/** A closed loop as a reader found it, in mm. */
export interface DrawnLoop {
  readonly points: Loop
  /** Layers that its pieces lie on; empty where the format has none. */
  readonly layers: readonly string[]
  /** False when arcs were flattened, so that the points are not those that a person gave. */
  readonly asGiven: boolean
  /** The role that the file itself states; null when only containment can tell. */
  readonly role: 'outer' | 'hole' | null
}

/** What a reader hands over to be judged. */
export interface Drawing {
  readonly unit: FileUnit | null
  readonly loops: readonly DrawnLoop[]
  readonly dropped: number
  readonly layers?: readonly LayerFound[]
  readonly findings: readonly Finding[]
  /** How files of this kind are always read; told last, and nothing that a person must look at. */
  readonly convention?: Finding
}

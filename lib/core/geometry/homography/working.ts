import type { WorkingStep } from '../../result'
import { figure } from '../../units/figure'
import type { Bent } from './bent'
import type { PictureToFace } from './types'

/** The lines of hand calculation: where one mark goes, what the residuals say, what a bend does. */
export function pictureWorking(value: PictureToFace, bend: Bent | null): readonly WorkingStep[] {
  return [...firstMark(value), ...residualLines(value), ...outlineLines(value), ...bendLines(value, bend)]
}

/** Enough digits for a hand calculation to come out within a hundredth of a millimetre. */
const exact = (figures: number) => String(Number(figures.toPrecision(10)))

function firstMark({ toFace, marks }: PictureToFace): readonly WorkingStep[] {
  const { tag, atPx, fittedMm } = marks[0]!
  const [first, second, last] = toFace
  const sum = ([a, b, c]: readonly [number, number, number]) =>
    `(${exact(a)} x ${exact(atPx[0])} + ${exact(b)} x ${exact(atPx[1])} + ${exact(c)})`
  const share = (row: readonly [number, number, number]) => `${sum(row)} / ${sum(last)}`
  return [
    step(
      'u',
      `${tag} on the face, along u`,
      '(h11 x + h12 y + h13) / (h31 x + h32 y + h33)',
      share(first),
      fittedMm[0],
    ),
    step(
      'v',
      `${tag} on the face, along v`,
      '(h21 x + h22 y + h23) / (h31 x + h32 y + h33)',
      share(second),
      fittedMm[1],
    ),
  ]
}

function residualLines({
  marks,
  freedom,
  rmsMm,
  largestMm,
  spreadMm,
}: PictureToFace): readonly WorkingStep[] {
  const free: WorkingStep = {
    symbol: 'f',
    label: 'figures beyond the eight of the fit',
    formula: '2 n - 8',
    numbers: `2 x ${marks.length} - 8`,
    value: freedom,
    unit: '1',
    sourceId: 'hartley-zisserman',
  }
  if (rmsMm === null || largestMm === null || spreadMm === null) return [free]
  const squares = marks.map((mark) => `${figure(mark.residualMm ?? 0, 3)}²`).join(' + ')
  return [
    free,
    step(
      'r_rms',
      'root mean square of the residuals',
      'sqrt(sum r² / n)',
      `sqrt((${squares}) / ${marks.length})`,
      rmsMm,
    ),
    step(
      'r_max',
      'largest residual',
      'max r',
      `max of ${marks.map((mark) => figure(mark.residualMm ?? 0, 3)).join(', ')}`,
      largestMm,
    ),
    step(
      's',
      'spread of a mark along u or v (standard deviation)',
      'r_rms sqrt(n / f)',
      `${figure(rmsMm, 4)} x sqrt(${marks.length} / ${freedom})`,
      spreadMm,
    ),
  ]
}

function outlineLines({ outlineSlip, outlineSpreadMm, spreadMm }: PictureToFace): readonly WorkingStep[] {
  if (outlineSlip === null) return []
  const slip: WorkingStep = {
    symbol: 'k',
    label: 'slip of the worst point of the outline for 1 mm in the marks',
    formula: "sqrt(largest eigenvalue of G (J' J)^-1 G')",
    numbers: figure(outlineSlip, 4),
    value: outlineSlip,
    unit: '1',
    sourceId: 'hartley-zisserman',
  }
  if (outlineSpreadMm === null || spreadMm === null) return [slip]
  return [
    slip,
    step(
      's_outline',
      'spread of the worst point of the outline (standard deviation)',
      'k s',
      `${figure(outlineSlip, 4)} x ${figure(spreadMm, 4)}`,
      outlineSpreadMm,
    ),
  ]
}

function bendLines({ viewDeg }: PictureToFace, bend: Bent | null): readonly WorkingStep[] {
  if (bend === null) return []
  const { radiusMm, spanMm, sagittaMm, sidewaysMm } = bend
  const [radius, whole] = [figure(radiusMm), figure(Math.min(spanMm, 2 * radiusMm))]
  return [
    derived(
      'h',
      'how far the bent face stands off the plane',
      'R - sqrt(R² - (L / 2)²)',
      `${radius} - sqrt(${radius}² - (${whole} / 2)²)`,
      sagittaMm,
    ),
    derived(
      'd',
      'how far that puts a point sideways',
      'h tan(angle from square on)',
      `${figure(sagittaMm, 3)} x tan(${figure(viewDeg, 1)}°)`,
      sidewaysMm,
    ),
  ]
}

function step(symbol: string, label: string, formula: string, numbers: string, value: number): WorkingStep {
  return { symbol, label, formula, numbers, value, unit: 'mm', sourceId: 'hartley-zisserman' }
}

function derived(
  symbol: string,
  label: string,
  formula: string,
  numbers: string,
  value: number,
): WorkingStep {
  return { ...step(symbol, label, formula, numbers, value), sourceId: 'derived' }
}

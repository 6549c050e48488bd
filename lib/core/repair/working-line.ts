import type { WorkingStep } from '../result'
import type { SourceId } from '../sources'

/** One line of hand calculation; from the stated formula unless another source is named. */
export function line(
  symbol: string,
  label: string,
  formula: string,
  numbers: string,
  value: number,
  unit: string,
  sourceId: SourceId = 'derived',
): WorkingStep {
  return { symbol, label, formula, numbers, value, unit, sourceId }
}

/** Sum of a list of numbers. */
export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}

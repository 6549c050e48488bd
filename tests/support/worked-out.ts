import type { WorkingStep } from '#lib/core/result'

const functions: Readonly<Record<string, (value: number) => number>> = {
  sqrt: Math.sqrt,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  atan: Math.atan,
  cosh: Math.cosh,
}

/**
 * What the figures of a line of working come to: "sqrt(4 x 2.6 x (1 + 2 / 3))", "400 x sin(2.862°)²". Throws on words that it
 * doesn't know, since such a line can't be followed by hand.
 */
export function workedOut({ numbers }: Pick<WorkingStep, 'numbers'>): number {
  const signs = numbers.match(/\d+(\.\d+)?(e[+-]\d+)?|[a-z]+|[-+/()°²]/gi) ?? []
  let at = 0
  const next = () => signs[at]
  const take = () => signs[at++]
  const sum = (): number => {
    let value = term()
    while (next() === '+' || next() === '-') value += take() === '+' ? term() : -term()
    return value
  }
  const term = (): number => {
    let value = factor()
    while (next() === 'x' || next() === '/') value = take() === 'x' ? value * factor() : value / factor()
    return value
  }
  const factor = (): number => {
    let value = atom()
    for (;;) {
      if (next() === '²') value **= 2
      else if (next() === '°') value *= Math.PI / 180
      else return value
      take()
    }
  }
  const atom = (): number => {
    const sign = take() ?? ''
    if (sign === '-') return -factor()
    if (sign === '(') {
      const value = sum()
      if (take() !== ')') throw new Error(`a bracket stays open in "${numbers}"`)
      return value
    }
    const named = functions[sign]
    if (named) return named(atom())
    const value = Number(sign)
    if (sign === '' || Number.isNaN(value)) throw new Error(`"${sign}" is no figure in "${numbers}"`)
    return value
  }
  const value = sum()
  if (at < signs.length) throw new Error(`"${signs.slice(at).join(' ')}" is left over in "${numbers}"`)
  return value
}

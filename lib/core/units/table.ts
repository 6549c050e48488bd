/**
 * The one table of units. Inside the product a quantity is a plain number in the unit that stands first in its
 * list; text with units exists only at the edges. Inch, pound, yard and foot are exact by definition; inHg and
 * Torr by the conventional mercury column (1 inHg = 33.86389 mbar at 0 degC).
 */

export type Quantity =
  | 'length'
  | 'temperature'
  | 'pressure'
  | 'areal-weight'
  | 'density'
  | 'duration'
  | 'mass'
  | 'angle'
  | 'ratio'
  | 'fraction'
  | 'modulus'
  | 'force'
  | 'area'
  | 'volume'
  | 'roll-length'
  | 'hours'

export interface Unit {
  /** As it is written and printed. */
  readonly symbol: string
  /** inside = value * factor + offset */
  readonly factor: number
  readonly offset?: number
  readonly alsoWritten?: readonly string[]
}

export interface QuantityUnits {
  /** With its article, for messages: "a length". */
  readonly name: string
  /** The first one is the unit inside. */
  readonly units: readonly Unit[]
  /** Least value inside, where nature sets one. */
  readonly least?: number
  /** Units that may follow one another from large to small: "1 h 30 min". */
  readonly compound?: readonly string[]
}

const poundKg = 0.45359237
const ounceG = (poundKg * 1000) / 16
const yardM = 0.9144
const poundForceN = poundKg * 9.80665
const psiMpa = poundForceN / (25.4 * 25.4)

export const quantities: Readonly<Record<Quantity, QuantityUnits>> = {
  length: {
    name: 'a length',
    units: [
      { symbol: 'mm', factor: 1 },
      { symbol: 'cm', factor: 10 },
      { symbol: 'm', factor: 1000 },
      { symbol: 'um', factor: 0.001, alsoWritten: ['µm', 'μm', 'micron', 'microns'] },
      { symbol: 'in', factor: 25.4, alsoWritten: ['"', '″', '”', 'inch', 'inches', 'in.'] },
      { symbol: 'ft', factor: 304.8, alsoWritten: ["'", '′', '’', 'foot', 'feet', 'ft.'] },
      { symbol: 'mil', factor: 0.0254, alsoWritten: ['mils'] },
      { symbol: 'thou', factor: 0.0254 },
    ],
    compound: ['ft', 'in'],
  },
  temperature: {
    name: 'a temperature',
    units: [
      { symbol: 'C', factor: 1, alsoWritten: ['°C', 'ºC', 'degC', 'deg C'] },
      { symbol: 'F', factor: 5 / 9, offset: -160 / 9, alsoWritten: ['°F', 'ºF', 'degF', 'deg F'] },
      { symbol: 'K', factor: 1, offset: -273.15 },
    ],
    least: -273.15,
  },
  pressure: {
    name: 'an absolute pressure',
    units: [
      { symbol: 'mbar', factor: 1, alsoWritten: ['hPa', 'mbara'] },
      { symbol: 'kPa', factor: 10 },
      { symbol: 'Pa', factor: 0.01 },
      { symbol: 'bar', factor: 1000, alsoWritten: ['bara'] },
      { symbol: 'inHg', factor: 33.86389, alsoWritten: ['in Hg', '"Hg', 'inHg abs'] },
      { symbol: 'psi', factor: psiMpa * 10_000, alsoWritten: ['psia'] },
      { symbol: 'Torr', factor: 1013.25 / 760, alsoWritten: ['mmHg', 'mm Hg'] },
    ],
    least: 0,
  },
  'areal-weight': {
    name: 'an areal weight',
    units: [
      { symbol: 'g/m2', factor: 1, alsoWritten: ['g/m²', 'gsm', 'g/m^2'] },
      { symbol: 'oz/yd2', factor: ounceG / (yardM * yardM), alsoWritten: ['oz/yd²', 'oz/yd^2'] },
    ],
    least: 0,
  },
  density: {
    name: 'a density',
    units: [
      { symbol: 'g/cm3', factor: 1, alsoWritten: ['g/cm³', 'g/cc', 'g/cm^3'] },
      { symbol: 'kg/m3', factor: 0.001, alsoWritten: ['kg/m³', 'kg/m^3'] },
    ],
    least: 0,
  },
  duration: {
    name: 'a duration',
    units: [
      { symbol: 'min', factor: 1, alsoWritten: ['mins', 'minute', 'minutes'] },
      { symbol: 'h', factor: 60, alsoWritten: ['hr', 'hrs', 'hour', 'hours'] },
      { symbol: 'd', factor: 1440, alsoWritten: ['day', 'days'] },
    ],
    least: 0,
    compound: ['d', 'h', 'min'],
  },
  mass: {
    name: 'a mass',
    units: [
      { symbol: 'kg', factor: 1 },
      { symbol: 'g', factor: 0.001 },
      { symbol: 'lb', factor: poundKg, alsoWritten: ['lbs'] },
    ],
    least: 0,
  },
  angle: { name: 'an angle', units: [{ symbol: 'deg', factor: 1, alsoWritten: ['°', 'degree', 'degrees'] }] },
  ratio: { name: 'a ratio', units: [{ symbol: ':1', factor: 1 }], least: 0 },
  fraction: {
    name: 'a fraction',
    units: [
      { symbol: '', factor: 1 },
      { symbol: '%', factor: 0.01, alsoWritten: ['percent', 'per cent'] },
    ],
  },
  modulus: {
    name: 'a stress or modulus',
    units: [
      { symbol: 'MPa', factor: 1, alsoWritten: ['N/mm2', 'N/mm²'] },
      { symbol: 'GPa', factor: 1000 },
      { symbol: 'ksi', factor: psiMpa * 1000 },
    ],
  },
  force: {
    name: 'a force',
    units: [
      { symbol: 'N', factor: 1 },
      { symbol: 'kN', factor: 1000 },
    ],
  },
  area: {
    name: 'an area',
    units: [
      { symbol: 'm2', factor: 1, alsoWritten: ['m²', 'm^2', 'sqm'] },
      { symbol: 'cm2', factor: 1e-4, alsoWritten: ['cm²', 'cm^2'] },
      { symbol: 'ft2', factor: 0.3048 * 0.3048, alsoWritten: ['ft²', 'ft^2', 'sq ft', 'sqft'] },
      { symbol: 'yd2', factor: yardM * yardM, alsoWritten: ['yd²', 'yd^2', 'sq yd'] },
    ],
    least: 0,
  },
  volume: {
    name: 'a volume',
    units: [
      { symbol: 'l', factor: 1, alsoWritten: ['litre', 'litres', 'liter', 'liters', 'dm3'] },
      { symbol: 'ml', factor: 0.001, alsoWritten: ['cc', 'cm3'] },
    ],
    least: 0,
  },
  // Along a roll metres are meant, and in the freezer hours: a bare figure must not be read as mm or minutes.
  'roll-length': {
    name: 'a length off the roll',
    units: [
      { symbol: 'm', factor: 1 },
      { symbol: 'cm', factor: 0.01 },
      { symbol: 'mm', factor: 0.001 },
      { symbol: 'ft', factor: 0.3048, alsoWritten: ['foot', 'feet'] },
      { symbol: 'yd', factor: yardM, alsoWritten: ['yard', 'yards'] },
    ],
    least: 0,
  },
  hours: {
    name: 'a time in hours',
    units: [
      { symbol: 'h', factor: 1, alsoWritten: ['hr', 'hrs', 'hour', 'hours'] },
      { symbol: 'min', factor: 1 / 60, alsoWritten: ['mins', 'minute', 'minutes'] },
      { symbol: 'd', factor: 24, alsoWritten: ['day', 'days'] },
    ],
    least: 0,
    compound: ['d', 'h', 'min'],
  },
}

/** Symbol of the unit that numbers have inside. */
export function insideUnit(kind: Quantity): string {
  return quantities[kind].units[0]!.symbol
}

export function unitSymbols(kind: Quantity): readonly string[] {
  return quantities[kind].units.map((unit) => unit.symbol)
}

/** RangeError on a unit that the kind does not have. */
export function knownUnit(kind: Quantity, symbol: string): Unit {
  const unit = findUnit(kind, symbol)
  if (unit === null) throw new RangeError(unknownUnit(kind, symbol))
  return unit
}

/** Exactly as written first; then without regard to case, where that leaves one. */
export function findUnit(kind: Quantity, text: string): Unit | null {
  const wanted = text.replace(/\s+/g, ' ')
  const names = (unit: Unit) => [unit.symbol, ...(unit.alsoWritten ?? [])]
  const { units } = quantities[kind]
  const exact = units.find((unit) => names(unit).includes(wanted))
  if (exact !== undefined) return exact
  const loose = units.filter((unit) =>
    names(unit).some((name) => name.toLowerCase() === wanted.toLowerCase()),
  )
  return loose.length === 1 ? loose[0]! : null
}

/** What to say of a unit that is not in the table. */
export function unknownUnit(kind: Quantity, text: string): string {
  const { name, units } = quantities[kind]
  const known = units.map((unit) => unit.symbol || 'no unit').join(', ')
  if (kind === 'pressure' && /(g|gauge|vac(uum)?|rel)\)?$/i.test(text)) {
    return `"${text}" is a gauge reading; ${name} is needed. Take it from the barometer and give one of: ${known}.`
  }
  const other = (Object.keys(quantities) as Quantity[]).find((each) => findUnit(each, text) !== null)
  const what =
    other === undefined ? `"${text}" is not a known unit` : `"${text}" is ${quantities[other].name}`
  return `${what}; ${name} is given in one of: ${known}.`
}

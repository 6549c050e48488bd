/** The one table of units: parse, format, convert. */
export { formatQuantity, fromInside, toInside } from './units/convert'
export { figure } from './units/figure'
export { currencyDecimals, formatMoney, moneyText, type ParsedMoney, parseMoney } from './units/money'
export { type ParsedNumber, parseNumber } from './units/number'
export { type ParsedQuantity, parseQuantity } from './units/parse'
export { insideUnit, type Quantity, quantities, unitSymbols } from './units/table'

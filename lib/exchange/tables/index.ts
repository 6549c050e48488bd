/** Tables as files: CSV that no spreadsheet runs, XLSX with typed cells. */
export { type CsvOptions, csvChunks, csvText, type DecimalMark } from './csv'
export { guard, mayRun, unguard } from './guard'
export { attachment, sheetName, tableFileName } from './names'
export type { Batches, Cell, ColumnKind, Row, TableColumn, TableHead } from './types'
export { mostSheetCells, xlsxBytes } from './xlsx'

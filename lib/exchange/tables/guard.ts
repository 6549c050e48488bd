/**
 * What a spreadsheet may take for a formula: = + - @ and their wide and small forms, also behind blanks and signs
 * that can't be seen. Source: the list that OWASP publishes under "CSV injection"; the wide forms are from memory.
 */
const opensFormula = /^[\p{C}\p{Z}\s]*[=+\-@＝＋－＠﹦﹢﹣﹫−]/u

/** A tab or a line break in front is thrown away by some programs, and then the next sign counts. */
const opensWithBreak = /^[\t\r\n]/

/** "-12.5", "+3", "-1e-7", "-12,5": read as a number, whatever the program's decimal sign. */
const plainNumber = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/

/** Whether a text is a danger when a spreadsheet opens it from a CSV file. */
export function mayRun(text: string): boolean {
  return opensWithBreak.test(text) || (opensFormula.test(text) && !plainNumber.test(text))
}

/**
 * Text that no spreadsheet takes for a formula: with an apostrophe in front where there is a danger. A text that
 * begins with an apostrophe gets another one, so that taking one off always gives the text back.
 */
export function guard(text: string): string {
  return text.startsWith("'") || mayRun(text) ? `'${text}` : text
}

/** The text as it was before `guard`, for reading our own files. */
export function unguard(text: string): string {
  return text.startsWith("'") ? text.slice(1) : text
}

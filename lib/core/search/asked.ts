import { fold, squeeze } from './fold'
import { type GridCell, readCell } from './grid-cell'

/** What somebody typed into the search, taken apart. */
export interface Asked {
  /** As it is compared: folded, single blanks. */
  readonly whole: string
  /** The whole without the signs between, for codes. */
  readonly code: string
  /** Words that must all be found, each with a letter or a figure; at most eight. */
  readonly words: readonly string[]
  /** "patch 7", "LH-P patch 7", "LH-P patches": the number where one is given, and the words before it. */
  readonly patch: { readonly number: number | null; readonly words: readonly string[] } | null
  /** "floor B5": the cell of the location grid, and the words before it. */
  readonly cell: { readonly cell: GridCell; readonly words: readonly string[] } | null
}

/** Longer than this is no search. */
export const longestAsked = 200
const mostWords = 8

/** Text with a blank for each sign that no stored text holds: NUL and its kin, halves of pairs. */
export function plainSigns(typed: string): string {
  return typed.replace(/[\p{Cc}\p{Cs}]/gu, ' ')
}

/** Takes apart what was typed. Without a letter or a figure in it there is nothing to look for: no words. */
export function readAsked(typed: string): Asked {
  const whole = fold(plainSigns(typed.slice(0, longestAsked)))
    .trim()
    .replace(/\s+/g, ' ')
  const words = [...new Set(whole.split(' ').map(trimmed))].filter(hasSign).slice(0, mostWords)
  const patch = /^(.*?)\bpatch(?:es)?(?: ?#?(\d{1,4}))?$/.exec(whole)
  const last = words[words.length - 1] ?? ''
  const cell = readCell(last)
  return {
    whole,
    code: squeeze(whole),
    words,
    patch: patch
      ? { number: patch[2] === undefined ? null : Number(patch[2]), words: wordsOf(patch[1] ?? '') }
      : null,
    cell: cell ? { cell, words: words.slice(0, -1) } : null,
  }
}

function wordsOf(text: string): readonly string[] {
  return text.split(' ').map(trimmed).filter(hasSign)
}

/** A word without the quotes and commas round it. */
function trimmed(word: string): string {
  return word.replace(/^["'(,;:]+|["'),;:.!?]+$/g, '')
}

function hasSign(word: string): boolean {
  return /[\p{L}\p{N}]/u.test(word)
}

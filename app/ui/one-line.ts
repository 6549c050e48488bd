/** Words in one line, parted by semicolons; a part that is blank falls out, and so does its full stop before a semicolon. */
export function oneLine(parts: readonly (string | null | undefined)[]): string {
  return parts
    .map((part) => part?.trim().replace(/\.$/, ''))
    .filter(Boolean)
    .join('; ')
}

/** The beginning of a text, cut between words. */
export function shortened(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most).replace(/\s+\S*$/, '')} …`
}

/**
 * Width of a line of text for finding it a place, without a font at hand: advances of IBM Plex Sans in
 * thousandths of the em, regular and semibold taken together at the wider one, by classes of letters. Never
 * below the true width for what the drawings write; some per cent above it.
 */
const classes: readonly (readonly [RegExp, number])[] = [
  [/[ijl.,:;'|!· ]/u, 350],
  [/[frt()[\]/I-]/u, 440],
  [/[mwMW%→]/u, 960],
  [/[A-HJ-LN-VX-Z]/u, 720],
]
const ordinary = 610

export function textWidthMm(text: string, sizeMm: number): number {
  let thousandths = 0
  for (const letter of text) thousandths += classes.find(([kind]) => kind.test(letter))?.[1] ?? ordinary
  return (thousandths / 1000) * sizeMm
}

/** Above and below the baseline, in ems: capitals and descenders of the same family. */
export const capHeightEm = 0.7
export const descentEm = 0.22

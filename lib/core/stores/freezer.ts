/**
 * Hours between taking a roll out and putting it back, both as ISO moments with offset. RangeError when it went back
 * before it came out.
 */
export function hoursBetween(out: string, back: string): number {
  const hours = (Date.parse(back) - Date.parse(out)) / 3_600_000
  if (!Number.isFinite(hours) || hours <= 0)
    throw new RangeError(`back at ${back} is not after out at ${out}`)
  return hours
}

/** The address of a page with its query, for whoever has to sign in first. */
export function addressOf(
  path: string,
  query: Readonly<Record<string, string | string[] | undefined>>,
): string {
  const pairs = Object.entries(query).flatMap(([name, value]) =>
    value === undefined ? [] : [value].flat().map((each): [string, string] => [name, each]),
  )
  return pairs.length === 0 ? path : `${path}?${new URLSearchParams(pairs)}`
}

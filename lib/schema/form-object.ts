/**
 * The text fields of a plain form as an object; "data.coats" becomes { data: { coats } }, and "lots.0.lot" a row that
 * the schema's list takes. Of fields with one name the last counts. Files are left out.
 */
export function formObject(form: FormData): Record<string, unknown> {
  const root: Record<string, unknown> = {}
  for (const key of new Set(form.keys())) {
    const path = key.split('.')
    // A name such as "__proto__.role" must not reach what all objects share.
    if (key.startsWith('$ACTION') || path.some((step) => step in Object.prototype)) continue
    const value = form
      .getAll(key)
      .filter((each) => typeof each === 'string')
      .at(-1)
    if (value === undefined) continue
    let place = root
    for (const step of path.slice(0, -1)) {
      if (typeof place[step] !== 'object') place[step] = {}
      place = place[step] as Record<string, unknown>
    }
    place[path.at(-1) ?? key] = value
  }
  return root
}

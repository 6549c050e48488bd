import type { Route } from 'next'

/** Where an entry is read: on the page of the history that holds it. `home` is its mould's or pattern's page, "/moulds/LH-P". */
export function entryHref(home: string, id: string): Route {
  return `${home}?entry=${id}#entry-${id}` as Route
}

import { listRack } from '#lib/services/rack'

interface Column {
  readonly name: string
  /** The word in the address, where the rack can be sorted by this column. */
  readonly sort?: string
  /** Sorted with the highest first. */
  readonly falling?: boolean
  readonly number?: boolean
}

export const columns: readonly Column[] = [
  { name: 'Mould', sort: 'code' },
  { name: 'State', sort: 'state' },
  { name: 'Pulls, season / all', sort: 'pulls', falling: true, number: true },
  { name: 'Since coated / sealed / stripped', sort: 'coated', falling: true, number: true },
  { name: 'Last leak check', sort: 'leak', number: true },
  { name: 'Next', sort: 'next' },
  { name: 'Place', sort: 'place' },
  { name: 'Pull strip' },
]

/** What an address asks of the rack; a word that means nothing there is passed over. */
export function rackAsked(query: Readonly<Record<string, string | string[] | undefined>>) {
  const read = <const Name extends 'find' | 'state' | 'sort' | 'page'>(name: Name, value: unknown) => {
    const understood = listRack.schema.safeParse({ [name]: value })
    return understood.success ? understood.data[name] : undefined
  }
  const state = read('state', query.state)
  return {
    find: read('find', query.find) ?? '',
    sort: read('sort', query.sort) ?? 'code',
    page: read('page', Number(query.page)) ?? 1,
    ...(state === undefined ? {} : { state }),
  }
}

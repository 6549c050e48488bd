import type { Route } from 'next'
import type { PictureSubject } from '#lib/schema/picture'

/** What pictures are with, with the code that people know it by (of a built part: its serial). */
export interface NamedSubject extends PictureSubject {
  readonly code: string
}

/** Where pictures of a thing are added, listed, laid side by side, and where the thing itself stands. */

const withQuery = (path: string, query: Readonly<Record<string, string | null | undefined>>): Route => {
  const given = Object.entries(query).filter((each): each is [string, string] => Boolean(each[1]))
  return (given.length === 0 ? path : `${path}?${new URLSearchParams(given)}`) as Route
}

export const addAddress = (
  { on, onId }: PictureSubject,
  given: {
    readonly entryId?: string | null
    readonly like?: string | null
    readonly view?: string | null
  } = {},
): Route =>
  withQuery('/pictures/add', { on, id: onId, entry: given.entryId, like: given.like, view: given.view })

export const allAddress = (
  { on, onId, code }: NamedSubject,
  query: { readonly view?: string; readonly show?: string } = {},
): Route =>
  on === 'mould'
    ? withQuery(`/pictures/mould/${encodeURIComponent(code)}`, query)
    : withQuery('/pictures/all', { on, id: onId, ...query })

export const viewsAddress = (
  { on, onId }: PictureSubject,
  query: { readonly view?: string; readonly left?: string; readonly right?: string } = {},
): Route => withQuery('/pictures/views', { on, id: onId, ...query })

const homes = { mould: '/moulds', pattern: '/patterns', set: '/sets', part: '/parts/built' } as const

export const homeAddress = ({ on, code }: NamedSubject): Route =>
  `${homes[on]}/${encodeURIComponent(code)}` as Route

export const subjectWords = {
  mould: 'mould',
  pattern: 'pattern',
  set: 'split mould',
  part: 'built part',
} as const

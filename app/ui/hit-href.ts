import type { Route } from 'next'
import type { Hit } from '#lib/core/search/index'
import { entryHref } from './entry-href'

const step = encodeURIComponent

const ofHref = {
  mould: '/moulds/',
  set: '/sets/',
  pattern: '/patterns/',
  'built-part': '/parts/built/',
} as const

/** The page on which a hit is seen. People are looked after by the lead; for others a person leads to what they wrote. */
export function hitHref(hit: Pick<Hit, 'kind' | 'id' | 'title' | 'of'>, lead: boolean): Route {
  return hrefOf(hit, lead) as Route
}

function hrefOf({ kind, id, title, of }: Pick<Hit, 'kind' | 'id' | 'title' | 'of'>, lead: boolean): string {
  const home = of ? `${ofHref[of.kind]}${step(of.code)}` : '/find'
  switch (kind) {
    case 'mould':
      return `/moulds/${step(title)}`
    case 'set':
      return `/sets/${step(title)}`
    case 'pattern':
      return `/patterns/${step(title)}`
    case 'part':
      return `/parts?part=${step(title)}`
    case 'built-part':
      return `/parts/built/${step(title)}`
    case 'patch':
      return `/patches/${id}`
    case 'point':
      return home
    case 'damage':
    case 'entry':
      return of ? entryHref(home, id) : home
    case 'material':
      return `/stores/materials/${id}`
    case 'product':
      return `/stores/products/${id}`
    case 'lot':
      return `/stores/lots/${id}`
    case 'stack':
      return `/stores/stacks/${id}`
    case 'person':
      return lead ? `/people#person-${id}` : `/find?q=${step(title)}&in=entry`
    case 'picture':
      return `/pictures/${id}`
  }
}

'use client'
import type { LogKind } from '#lib/core/log/index'
import { ChoiceField, type Option, SelectField } from '../fields'

export interface LogFieldsProps {
  readonly kind: LogKind
  readonly of: 'mould' | 'pattern'
  readonly lead: boolean
  /** How many matters stop the next lay-up. */
  readonly stops: number
  readonly states: readonly string[]
  /** The whole face, areas, spots of patches; empty where the kind has no place. */
  readonly places: readonly Option[]
  readonly products: readonly string[]
  readonly tags: readonly string[]
  readonly people: readonly string[]
  /** Open matters that may be settled. */
  readonly matters: readonly Option[]
  /** The pieces of the split mould that this mould is one of. */
  readonly pieces: readonly string[]
}

export const option = (value: string, label = value): Option => ({ value, label })
export const options = (...values: readonly string[]): Option[] => values.map((value) => option(value))

/** Where on the face; nothing to choose, nothing asked. */
export function Where({ places }: { readonly places: readonly Option[] }) {
  if (places.length < 2) return null
  return places.length <= 5 ? (
    <ChoiceField name="where" label="Where" options={places} />
  ) : (
    <SelectField name="where" label="Where" options={places} />
  )
}

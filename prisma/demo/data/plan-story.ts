import type { IsoDate } from '#lib/core/dates'
import type { PatchSketch } from '#lib/schema/patch'
import { idOf } from '../base/ids'
import type { Who } from './people'

/** One version of a patch plan with what became of it; days and people of the story. */
export interface PlanStory {
  readonly mould: string
  readonly area: string
  readonly number: number
  readonly version: number
  readonly title: string
  readonly reason: string
  readonly note: string
  readonly sketched: { readonly on: IsoDate; readonly by: Who }
  readonly sketch: Pick<PatchSketch, 'side' | 'edge' | 'taper' | 'opening' | 'pliesFromFace' | 'coverPlies'>
  readonly putBy?: { readonly on: IsoDate; readonly by: Who; readonly reason: string }
  readonly signed?: {
    readonly on: IsoDate
    readonly by: Who
    /** Why each look was accepted, by the code of the finding. */
    readonly becauses: Readonly<Record<string, string>>
  }
  readonly bench?: { readonly on: IsoDate; readonly by: Who }
  readonly ticked?: { readonly by: Who; readonly second: Who; readonly stretches: readonly TickStretch[] }
  readonly laid?: { readonly on: IsoDate; readonly by: Who }
  readonly proved?: { readonly on: IsoDate; readonly by: Who }
}

/** Job lines up to and with the one of this code were ticked on these days, about as many on each; null: all of them. */
export interface TickStretch {
  readonly days: readonly IsoDate[]
  readonly through: string | null
}

export const patchKey = (mould: string, number: number) => `${mould}/patch ${number}`
export const patchIdOf = (mould: string, number: number) => idOf(patchKey(mould, number))
export const planIdOf = (mould: string, number: number, version: number) =>
  idOf(`${patchKey(mould, number)}/plan ${version}`)
export const laidKey = (mould: string, number: number) => `${patchKey(mould, number)}/laid`
export const provedKey = (mould: string, number: number) => `${patchKey(mould, number)}/proved`

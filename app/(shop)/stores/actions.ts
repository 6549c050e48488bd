'use server'
import type { Route } from 'next'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { addMaterial, addStack, changeMaterial, changeStack } from '#lib/services/stores'
import {
  addLot,
  changeLot,
  closeLot,
  correctMove,
  countLot,
  freezerHours,
  reopenLot,
  takeFromLot,
} from '#lib/services/stores-lots'
import { addProduct, changeProduct } from '#lib/services/stores-products'
import { addPrice, addRate, addUsualRates } from '#lib/services/stores-rates'
import type { Verb } from '#lib/services/verb'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

async function save<Input>(verb: Verb<Input, unknown>, raw: unknown, to: string): Promise<FormAnswer> {
  const answer = await act(verb, raw)
  if (!answer.ok) return answer
  // Without this a browser that is on the page already shows what it had.
  revalidatePath(to.split('#')[0] ?? to)
  redirect(to as Route)
}

const idIn = (raw: unknown, key = 'id') => String((raw as Record<string, unknown> | null)?.[key] ?? '')

export async function saveNewMaterial(raw: unknown): Promise<FormAnswer> {
  return save(addMaterial, raw, `/stores/materials/${idIn(raw)}`)
}

export async function saveMaterial(raw: unknown): Promise<FormAnswer> {
  return save(changeMaterial, raw, `/stores/materials/${idIn(raw)}`)
}

export async function saveNewStack(raw: unknown): Promise<FormAnswer> {
  return save(addStack, raw, '/stores/stacks')
}

export async function saveStack(raw: unknown): Promise<FormAnswer> {
  return save(changeStack, raw, '/stores/stacks')
}

export async function saveNewProduct(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  return save(addProduct, raw, `/stores/products/${idIn(raw)}`)
}

export async function saveProduct(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  return save(changeProduct, raw, `/stores/products/${idIn(raw)}`)
}

export async function savePrice(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  return save(addPrice, raw, `/stores/${idIn(raw, 'subjectKind')}s/${idIn(raw, 'subjectId')}#prices`)
}

export async function saveRate(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return save(addRate, formObject(form), '/stores/rates')
}

export async function saveUsualRates(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return save(addUsualRates, formObject(form), '/stores/rates')
}

export async function saveNewLot(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  return save(addLot, raw, `/stores/lots/${idIn(raw)}`)
}

export async function saveLot(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  return save(changeLot, raw, `/stores/lots/${idIn(raw)}`)
}

/** An act on a lot; its page shows what came of it. */
async function onLot<Input>(verb: Verb<Input, unknown>, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  return save(verb, raw, `/stores/lots/${idIn(raw, 'lotId')}`)
}

export async function take(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return onLot(takeFromLot, form)
}

export async function count(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return onLot(countLot, form)
}

export async function freezer(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return onLot(freezerHours, form)
}

export async function strike(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return onLot(correctMove, form)
}

export async function close(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return onLot(closeLot, form)
}

export async function reopen(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return onLot(reopenLot, form)
}

'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { addMaterial, addStack, changeMaterial, changeStack } from '#lib/services/stores'
import type { Verb } from '#lib/services/verb'
import { act } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

async function save<Input>(verb: Verb<Input, unknown>, raw: unknown): Promise<FormAnswer> {
  const answer = await act(verb, raw)
  if (!answer.ok) return answer
  redirect('/stores' as Route)
}

export async function saveNewMaterial(raw: unknown): Promise<FormAnswer> {
  return save(addMaterial, raw)
}

export async function saveMaterial(raw: unknown): Promise<FormAnswer> {
  return save(changeMaterial, raw)
}

export async function saveNewStack(raw: unknown): Promise<FormAnswer> {
  return save(addStack, raw)
}

export async function saveStack(raw: unknown): Promise<FormAnswer> {
  return save(changeStack, raw)
}

'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { addPointIssue, readMouldById } from '#lib/services/moulds'
import { act } from '#lib/web/action'
import { requireActor } from '#lib/web/session'
import type { FormAnswer } from '../../../../ui/action-form'

export async function saveIssue(raw: unknown): Promise<FormAnswer> {
  const answer = await act(addPointIssue, raw)
  if (!answer.ok) return answer
  const mould = await readMouldById(await requireActor(), {
    id: String((raw as { mouldId: string }).mouldId),
  })
  redirect(`/moulds/${encodeURIComponent(mould.code)}` as Route)
}

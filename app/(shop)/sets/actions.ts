'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { addPiece, addSet, changeSet, takePieceOut } from '#lib/services/sets'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

const pageOf = (raw: unknown) => {
  const { code } = raw as { code?: unknown }
  return `/sets/${encodeURIComponent(String(code ?? '').trim())}`
}

export async function saveNewSet(raw: unknown): Promise<FormAnswer> {
  const answer = await act(addSet, raw)
  if (!answer.ok) return answer
  redirect(`${pageOf(raw)}/edit#pieces` as Route)
}

export async function saveSet(raw: unknown): Promise<FormAnswer> {
  const answer = await act(changeSet, raw)
  if (!answer.ok) return answer
  redirect(pageOf(raw) as Route)
}

/** A mould becomes a piece. The choice carries the mould's id and the version that was seen: "id version". */
export async function addThePiece(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const [mouldId = '', version = ''] = String(raw.mould ?? '').split(' ')
  const answer = await act(addPiece, { ...raw, mouldId, version })
  if (!answer.ok) return { ...answer, typed: raw, fields: atTheChoice(answer.fields) }
  redirect(piecesAfter(raw, mouldId, version))
}

/** An address of its own for each change: to the very same one the browser would only jump, and show the old list. */
const piecesAfter = (raw: unknown, mouldId: unknown, version: unknown) =>
  `${pageOf(raw)}/edit?piece=${String(mouldId)}.${String(version)}#pieces` as Route

const atTheChoice = ({ mouldId, version, ...rest }: Readonly<Record<string, string>>) =>
  mouldId || version ? { ...rest, mould: 'Choose a mould' } : rest

export async function takeThePieceOut(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const answer = await act(takePieceOut, raw)
  if (!answer.ok) return answer
  redirect(piecesAfter(raw, raw.mouldId, raw.version))
}

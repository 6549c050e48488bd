'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { addArea, addReadings, changeArea, strikeReading } from '#lib/services/moulds'
import type { Verb } from '#lib/services/verb'
import { act, formObject } from '#lib/web/action'
import { requireActor } from '#lib/web/session'
import type { FormAnswer } from '../../../../ui/action-form'
import { areaOf } from './sketch'

async function save<Input>(verb: Verb<Input, unknown>, form: FormData): Promise<FormAnswer> {
  const read = await areaOf(await requireActor(), form)
  if (!read.ok) return read
  const answer = await act(verb, read.raw)
  if (!answer.ok) return { ...answer, fields: shownAt(answer.fields), typed: read.raw }
  redirect(`/moulds/${encodeURIComponent(String(read.raw.code))}?area=${String(read.raw.id)}` as Route)
}

/** Messages stand at the fields that the form has for them. */
function shownAt(fields: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(fields).map(([key, says]) => {
      if (key.startsWith('boundary')) return ['boundaryText', says]
      if (key.startsWith('uAxis')) return ['uAxisText', says]
      if (key.startsWith('vAxis')) return ['vAxisText', says]
      if (key.startsWith('gridOriginMm')) return ['gridU', says]
      return [key.replace(/^lines\.(\d+)\./, 'line$1.').replace(/^keepOuts\.(\d+)\./, 'keep$1.'), says]
    }),
  )
}

export async function add(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return save(addArea, form)
}

export async function change(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return save(changeArea, form)
}

/** Thickness readings, a line each: u; v; thickness. */
export async function measure(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const lines = String(raw.readings ?? '')
    .split(/\r\n|\r|\n/)
    .filter((line) => line.trim() !== '')
  const ids = String(raw.ids ?? '').split(' ')
  const answer = await act(addReadings, {
    areaId: raw.areaId,
    measuredOn: raw.measuredOn,
    readings: lines.map((line, index) => {
      const [uMm = '', vMm = '', thicknessMm = ''] = line.includes(';')
        ? line.split(';')
        : line.trim().split(/\s+/)
      return { id: ids[index] ?? '', uMm: uMm.trim(), vMm: vMm.trim(), thicknessMm: thicknessMm.trim() }
    }),
  })
  if (!answer.ok) {
    const says = Object.entries(answer.fields)
      .map(([key, message]) => {
        const row = /^readings\.(\d+)\.(\w+)/.exec(key)
        return row ? `Line ${Number(row[1]) + 1}, ${row[2]?.replace('Mm', '')}: ${message}` : message
      })
      .join('; ')
    return { ...answer, fields: { ...answer.fields, readings: says }, typed: raw }
  }
  redirect(
    `/moulds/${encodeURIComponent(String(raw.code))}/areas/${String(raw.areaId)}?measured=${ids[0] ?? ''}#thickness` as Route,
  )
}

export async function strike(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const answer = await act(strikeReading, raw)
  if (!answer.ok) return answer
  redirect(
    `/moulds/${encodeURIComponent(String(raw.code))}/areas/${String(raw.areaId)}?measured=${String(raw.id)}#thickness` as Route,
  )
}

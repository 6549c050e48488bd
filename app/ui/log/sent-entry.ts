import { momentOf } from '#lib/core/dates'
import { measuredRows } from '#lib/core/log/index'
import { formObject } from '#lib/schema/form-object'
import type { FormAnswer } from '../action-form'

type Raw = Readonly<Record<string, unknown>>

export interface SentEntry {
  /** The form's fields as they were typed. */
  readonly typed: Raw
  /** The same as an entry, still text at its leaves. */
  readonly content: Raw
  /** Line of each measured point in the text that it was typed in. */
  readonly lines: readonly number[]
  /** What the points' text can't be read as. */
  readonly fault: string | null
}

/**
 * What a log form sends, put together as an entry: day and time as a moment, how well the day is known, the place as
 * area or patch, measured points from their lines, lots that were chosen.
 */
export function sentEntry(form: FormData, timeZone: string): SentEntry {
  const typed = formObject(form)
  const word = (name: string) => String(typed[name] ?? '').trim()
  const doneOn = word('doneOn')
  const time = word('time')
  const [where, id = ''] = word('where').split(':')
  const measured = typed.kind === 'measured' ? measuredRows(word('pointsText')) : null
  const known = word('known')
  const data = {
    ...(typed.data as Raw | undefined),
    ...(measured ? { points: measured.rows } : {}),
    // A pattern has no areas to choose between.
    ...(typed.kind === 'measured' && typed.patternId ? { frame: 'datum' } : {}),
  }
  return {
    typed,
    lines: measured?.lines ?? [],
    fault: measured?.faults[0] ?? null,
    content: {
      ...typed,
      data,
      areaId: where === 'area' ? id : '',
      patchId: where === 'patch' ? id : '',
      doneAt: time === '' ? '' : (momentOf(doneOn, time, timeZone) ?? `${doneOn} ${time}`),
      precision: time !== '' ? 'minute' : known === '' ? 'day' : known,
      uses: usesOf(typed.uses),
    },
  }
}

/** Rows in which neither a lot nor an amount was given ask for nothing. */
function usesOf(uses: unknown): unknown[] {
  if (typeof uses !== 'object' || uses === null) return []
  return Object.values(uses).filter((row) => {
    const { lotId, amount } = (row ?? {}) as Raw
    return String(lotId ?? '').trim() !== '' || String(amount ?? '').trim() !== ''
  })
}

/** A refusal with its messages at the fields that the form has. */
export function refusedAt(answer: Extract<FormAnswer, { ok: false }>, sent: SentEntry): FormAnswer {
  const fields: Record<string, string> = {}
  for (const [name, message] of Object.entries(answer.fields)) {
    const point = /^data\.points\.(\d+)\.(\w+?)(Mm)?$/.exec(name)
    if (name === 'doneAt') {
      fields.time ??= `${message}. A time such as 14:05; one that the clock skips does not exist`
    } else if (point) {
      const line = sent.lines[Number(point[1])]
      fields.pointsText ??= `Line ${line ?? '?'}, ${point[2]}: ${message}`
    } else if (name === 'data.points') fields.pointsText ??= message
    else if (name === 'areaId' || name === 'patchId') fields.where ??= message
    else fields[name] = message
  }
  return { ...answer, typed: sent.typed, fields }
}

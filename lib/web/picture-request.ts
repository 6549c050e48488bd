import 'server-only'
import { randomBytes } from 'node:crypto'
import { type NewPicture, pictureLimits } from '#lib/schema/picture'
import { type AddedPicture, addPicture, addPictureOf } from '#lib/services/pictures'
import type { Verb } from '#lib/services/verb'
import { Refusal } from '#lib/store/errors'
import { BodyFault, mostPicturesBytes, readForm } from './body'
import { addedAnswer } from './picture-answer'
import { answer, serve } from './route'
import { tellNext } from './told-next'

const cure = 'send fewer photos at once, or smaller ones'

/** The files of a form, without the empty ones that a browser sends for a field that was left alone. */
function filesOf(form: FormData): File[] {
  return form
    .getAll('file')
    .filter((each): each is File => each instanceof File && (each.size > 0 || each.name !== ''))
}

const textOf = (form: FormData, name: string): string => {
  const value = form.get(name)
  return typeof value === 'string' ? value.trim() : ''
}

/** The words that go with the file of number `index`; its id is the one of the same number. */
function wordsOf(form: FormData, index: number): Record<keyof NewPicture, unknown> {
  return {
    id: form.getAll('id')[index] ?? '',
    kind: textOf(form, 'kind') || 'photo',
    on: textOf(form, 'on'),
    onId: textOf(form, 'onId'),
    entryId: textOf(form, 'entryId') || null,
    caption: textOf(form, 'caption'),
    view: textOf(form, 'view'),
    takenOn: textOf(form, 'takenOn') || null,
  }
}

async function bytesOf(file: File | undefined): Promise<Uint8Array<ArrayBuffer>> {
  if (!file) throw new Refusal('Choose a photo or a drawing', { fields: { file: 'Choose a file' } })
  return new Uint8Array(await file.arrayBuffer())
}

/** One picture of a form; the form is read once the caller is known. */
function serveOne<Input>(
  request: Request,
  verb: Verb<Input, AddedPicture>,
  read: () => Promise<FormData>,
  index: number,
  rest: Readonly<Record<string, unknown>> = {},
): Promise<Response> {
  return serve(
    request,
    verb,
    async () => {
      const form = await read()
      if (filesOf(form).length > pictureLimits.filesAtOnce) {
        throw new BodyFault(
          413,
          `At most ${pictureLimits.filesAtOnce} files at once; send the others after these`,
        )
      }
      return { ...wordsOf(form, index), ...rest, bytes: await bytesOf(filesOf(form)[index]) }
    },
    (added) => answer(addedAnswer(added), added.written ? 201 : 200),
  )
}

function readOnce(request: Request): () => Promise<FormData> {
  let form: Promise<FormData> | null = null
  return () => {
    form ??= readForm(request, mostPicturesBytes, cure)
    return form
  }
}

/** A picture of a mould by its code: multipart form data with `file`, `id` and what goes with it. */
export function servePictureOf(request: Request, code: string): Promise<Response> {
  return serveOne(request, addPictureOf, readOnce(request), 0, { code })
}

/**
 * What the shop's own form sends. A script sends one file and is answered in JSON; without script the browser sends
 * several and is led back to the page, which tells how each of them fared.
 */
export async function servePictureForm(request: Request): Promise<Response> {
  const read = readOnce(request)
  const first = await serveOne(request, addPicture, read, 0)
  if (!(request.headers.get('accept') ?? '').includes('text/html')) return first
  const form = await read().catch(() => null)
  const files = form ? filesOf(form) : []
  const fates = [await fateOf(files[0]?.name, first)]
  if (files.length <= pictureLimits.filesAtOnce) {
    for (let index = 1; index < files.length; index += 1) {
      fates.push(await fateOf(files[index]?.name, await serveOne(request, addPicture, read, index)))
    }
  }
  const kept = fates.filter((fate) => fate.ok).length
  const back = kept === fates.length ? localPath(request, 'back') : localPath(request, 'again')
  return tellNext(
    request,
    back,
    { kept, lines: fates.map((fate) => fate.says).filter((line) => line !== '') },
    randomBytes(6).toString('hex'),
  )
}

interface Fate {
  readonly ok: boolean
  readonly says: string
}

/** "IMG_2.heic: This is a HEIC photo ..." */
async function fateOf(name: string | undefined, response: Response): Promise<Fate> {
  const body = (await response.json()) as {
    detail?: string
    notices?: string[]
    fields?: Record<string, string>
  }
  // A fault of the words is told at its field, one of the file in the sentence itself.
  const { file: _file, ...fields } = body.fields ?? {}
  const said = response.ok ? (body.notices ?? []) : [body.detail ?? '', ...Object.values(fields)]
  const words = said.filter(Boolean).join('. ')
  return { ok: response.ok, says: words === '' || !name ? words : `${name}: ${words}` }
}

/** A page of ours that the form's address names, so that it is known also of a form too large to be read. */
function localPath(request: Request, name: 'back' | 'again'): string {
  const path = new URL(request.url).searchParams.get(name) ?? ''
  return /^\/(?![/\\])/.test(path) ? path : '/moulds'
}

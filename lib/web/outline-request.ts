import 'server-only'
import { readLoops, readLoopsText } from '#lib/services/outline'
import { Refusal } from '#lib/store/errors'
import { BodyFault, fileBytes, mediaType, mostFileBytes, readBytes, readForm, readJson } from './body'
import { answer, serve } from './route'

/**
 * Reads an outline out of what was sent: JSON { name, text, unit }, multipart form data with `file` and `unit`, or the
 * file itself as the body with ?name= and ?unit=. The verdict is the answer, with status 200 also where it refuses.
 */
export function serveOutline(request: Request): Promise<Response> {
  const type = mediaType(request)
  if (type === 'application/json') return serve(request, readLoopsText, () => readJson(request), answer)
  return serve(
    request,
    readLoops,
    () => (type === 'multipart/form-data' ? fromForm(request) : fromBody(request)),
    answer,
  )
}

async function fromForm(request: Request): Promise<unknown> {
  const form = await readForm(request)
  const file = form.get('file')
  if (!(file instanceof File)) {
    throw new Refusal('Send the file in the field "file"', { fields: { file: 'Give a file' } })
  }
  return { name: file.name, bytes: await fileBytes(file), unit: blankAsNull(form.get('unit')) }
}

async function fromBody(request: Request): Promise<unknown> {
  const query = new URL(request.url).searchParams
  const name = query.get('name')
  if (!name) {
    const says =
      'Send JSON, multipart form data, or the file itself with ?name= (and ?unit= where the file tells none)'
    throw new BodyFault(415, says)
  }
  return { name, bytes: await readBytes(request, mostFileBytes), unit: blankAsNull(query.get('unit')) }
}

function blankAsNull(value: FormDataEntryValue | null): FormDataEntryValue | null {
  return value === '' ? null : value
}

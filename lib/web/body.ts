import 'server-only'

const MB = 1024 * 1024

/** The most that is taken of a file, and of a JSON body. */
export const mostFileBytes = 10 * MB
export const mostJsonBytes = 12 * MB

/** The most that a form with pictures holds in all. */
export const mostPicturesBytes = 50 * MB

/** What multipart form data may hold beside the file. */
const formExtraBytes = 64 * 1024

type FaultStatus = 400 | 413 | 415

const faultTitles = { 400: 'Not readable', 413: 'Too large', 415: 'Not this kind of body' } as const

/** A body that can't be taken: too large, of another kind than the route reads, or broken. */
export class BodyFault extends Error {
  readonly status: FaultStatus
  readonly title: string

  constructor(status: FaultStatus, message: string) {
    super(message)
    this.name = 'BodyFault'
    this.status = status
    this.title = faultTitles[status]
  }
}

/** "multipart/form-data; boundary=x" -> "multipart/form-data"; '' when the request doesn't say. */
export function mediaType(request: Request): string {
  return (request.headers.get('content-type') ?? '').split(';')[0]?.trim().toLowerCase() ?? ''
}

/**
 * The body of a request, counted while it comes in: what says or turns out to be larger than `most` bytes is refused
 * at once, and the rest of it is not kept. BodyFault 413.
 */
export async function readBytes(
  request: Request,
  most: number,
  cure = 'send a smaller file, or only the outline out of it',
): Promise<Uint8Array<ArrayBuffer>> {
  const tooLarge = () => new BodyFault(413, `At most ${Math.floor(most / MB)} MB; ${cure}`)
  if (Number(request.headers.get('content-length') ?? 0) > most) throw tooLarge()
  if (request.body === null) return new Uint8Array()
  const chunks: Uint8Array[] = []
  let length = 0
  const reader = request.body.getReader()
  for (;;) {
    const { done, value } = await reader.read().catch(() => {
      throw new BodyFault(400, 'The connection broke off before all of it was here; send it again')
    })
    if (done) break
    length += value.byteLength
    if (length > most) throw tooLarge()
    chunks.push(value)
  }
  const bytes = new Uint8Array(length)
  let at = 0
  for (const chunk of chunks) {
    bytes.set(chunk, at)
    at += chunk.byteLength
  }
  return bytes
}

/** The body as JSON. BodyFault 415 when it says that it is something else, 400 when it can't be read, 413. */
export async function readJson(request: Request): Promise<unknown> {
  const type = mediaType(request)
  if (type !== 'application/json' && !type.endsWith('+json')) {
    throw new BodyFault(
      415,
      `Send JSON with the header "Content-Type: application/json"${type ? `, not ${type}` : ''}`,
    )
  }
  const bytes = await readBytes(request, mostJsonBytes)
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
  } catch (error) {
    throw new BodyFault(
      400,
      `The body can't be read as JSON in UTF-8: ${error instanceof Error ? error.message : error}`,
    )
  }
}

/** The fields of multipart form data, files included. BodyFault 400 when it can't be read, 413. */
export async function readForm(request: Request, most = mostFileBytes, cure?: string): Promise<FormData> {
  const bytes = await readBytes(request, most + formExtraBytes, cure)
  try {
    return await new Response(bytes, {
      headers: { 'content-type': request.headers.get('content-type') ?? '' },
    }).formData()
  } catch {
    throw new BodyFault(400, "The body can't be read as multipart form data; check its boundary")
  }
}

/** The content of an uploaded file. BodyFault 413. */
export async function fileBytes(file: File): Promise<Uint8Array<ArrayBuffer>> {
  if (file.size > mostFileBytes)
    throw new BodyFault(413, `${file.name} is larger than ${mostFileBytes / MB} MB`)
  return new Uint8Array(await file.arrayBuffer())
}

/** What became of one file that was sent. lost: no answer, so that it may be sent again under the same id. */
export type Fate =
  | { readonly state: 'kept'; readonly notices: readonly string[]; readonly smallPath: string | null }
  | { readonly state: 'refused'; readonly says: string }
  | { readonly state: 'lost'; readonly says: string }

const patienceMs = 180_000

/** Sends one form and tells how far it has come, from 0 to 1; a plain fetch can't. Never rejects. */
export function sendPicture(
  address: string,
  form: FormData,
  onProgress: (share: number) => void,
): Promise<Fate> {
  return new Promise((settle) => {
    const request = new XMLHttpRequest()
    request.open('POST', address)
    request.setRequestHeader('accept', 'application/json')
    request.timeout = patienceMs
    request.upload.onprogress = ({ loaded, total }) => onProgress(total > 0 ? loaded / total : 0)
    const lost = () =>
      settle({
        state: 'lost',
        says: 'No answer from the shop. The file is still here: send it again; it is stored once.',
      })
    request.onerror = lost
    request.ontimeout = lost
    request.onabort = lost
    request.onload = () => settle(fateOf(request.status, request.responseText))
    request.send(form)
  })
}

interface Answer {
  readonly detail?: string
  readonly notices?: readonly string[]
  readonly smallPath?: string | null
  readonly fields?: Readonly<Record<string, string>>
}

function fateOf(status: number, text: string): Fate {
  const answer = parsed(text)
  if (status === 200 || status === 201) {
    return { state: 'kept', notices: answer.notices ?? [], smallPath: answer.smallPath ?? null }
  }
  const detail = answer.detail ?? 'The shop could not take it.'
  if (status === 401) {
    return {
      state: 'lost',
      says: 'You are signed out. Sign in again in another window, then send it again here.',
    }
  }
  if (status >= 500) return { state: 'lost', says: detail }
  const { file: _file, ...fields } = answer.fields ?? {}
  return { state: 'refused', says: [detail, ...Object.values(fields)].join('. ') }
}

function parsed(text: string): Answer {
  try {
    return Object(JSON.parse(text)) as Answer
  } catch {
    return {}
  }
}

'use client'
import { type ChangeEvent, type FormEvent, useEffect, useId, useRef, useState } from 'react'
import { type PictureSubject, pictureLimits } from '#lib/schema/picture'
import { type Fate, sendPicture } from './send-picture'
import { sizeWords } from './words'

interface Chosen {
  readonly id: string
  readonly file: File
  readonly state: 'waiting' | 'sending' | Fate['state']
  /** While it is being sent, from 0 to 1. */
  readonly share: number
  readonly says: readonly string[]
}

interface Props {
  readonly subject: PictureSubject
  readonly entryId: string | null
  /** Made on the server, so that a form without script that is sent twice is stored once. */
  readonly ids: readonly string[]
  readonly views: readonly string[]
  readonly view: string
  readonly today: string
  /** This page, to which a browser without script comes back. */
  readonly here: string
}

const mostMb = pictureLimits.mostBytes / 1e6
const accepted = 'image/*,application/pdf,.pdf'

/**
 * Sends photos and drawings. Without script it is a plain form; with it each file goes on its own, with its progress,
 * and what was lost on the way stays here to be sent again.
 */
export function SendForm({ subject, entryId, ids, views, view, today, here }: Props) {
  const form = useRef<HTMLFormElement>(null)
  const told = useRef<HTMLParagraphElement>(null)
  const [chosen, setChosen] = useState<readonly Chosen[]>([])
  const [complaint, setComplaint] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const id = useId()
  /** An id is never given to a second file: what seemed lost may have been stored. */
  const used = useRef(new Set<string>())
  /** The words that a file was sent with first go with it again. */
  const sentWith = useRef(new Map<string, readonly [string, FormDataEntryValue][]>())
  const left = chosen.filter(({ state }) => state !== 'kept' && state !== 'refused')
  const kept = chosen.filter(({ state }) => state === 'kept').length
  const settled = chosen.length > 0 && left.length === 0

  const take = (files: readonly File[]) => {
    const free = ids.filter((each) => !used.current.has(each)).slice(0, files.length)
    for (const each of free) used.current.add(each)
    setComplaint(
      free.length < files.length ? `At most ${ids.length} files at once; send the others after these.` : null,
    )
    setChosen((before) => [
      ...before,
      ...files.slice(0, free.length).map((file, index) => judged(file, free[index] ?? '')),
    ])
  }

  // What was chosen before the script was there is taken over.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the script arrives
  useEffect(() => {
    for (const input of form.current?.querySelectorAll<HTMLInputElement>('input[type=file]') ?? []) {
      if (input.files && input.files.length > 0) take([...input.files])
      input.value = ''
    }
  }, [])

  useEffect(() => {
    if (left.length === 0) return
    const ask = (event: BeforeUnloadEvent) => event.preventDefault()
    window.addEventListener('beforeunload', ask)
    return () => window.removeEventListener('beforeunload', ask)
  }, [left.length])

  const choose = ({ target }: ChangeEvent<HTMLInputElement>) => {
    take([...(target.files ?? [])])
    // The list below holds them; the same file may be chosen again.
    target.value = ''
  }

  const mark = (id: string, changes: Partial<Chosen>) =>
    setChosen((before) => before.map((each) => (each.id === id ? { ...each, ...changes } : each)))

  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    if (busy) return
    if (left.length === 0) {
      setComplaint('Choose a photo or a drawing first.')
      return
    }
    setComplaint(null)
    setBusy(true)
    const words = [...new FormData(event.currentTarget)].filter(([name]) => name !== 'file' && name !== 'id')
    for (const each of left) {
      mark(each.id, { state: 'sending', share: 0, says: [] })
      const body = new FormData()
      if (!sentWith.current.has(each.id)) sentWith.current.set(each.id, words)
      for (const [name, value] of sentWith.current.get(each.id) ?? []) body.append(name, value)
      body.append('id', each.id)
      body.append('file', each.file)
      const fate = await sendPicture('/pictures/send', body, (share) => mark(each.id, { share }))
      mark(each.id, {
        state: fate.state,
        says: fate.state === 'kept' ? fate.notices : [fate.says],
      })
    }
    setBusy(false)
    told.current?.focus()
  }

  const again = left.some(({ state }) => state === 'lost')
  return (
    <form
      ref={form}
      className="form"
      method="post"
      encType="multipart/form-data"
      action={`/pictures/send?again=${encodeURIComponent(here)}`}
      onSubmit={send}
    >
      <input type="hidden" name="on" value={subject.on} />
      <input type="hidden" name="onId" value={subject.onId} />
      <input type="hidden" name="entryId" value={entryId ?? ''} />
      {ids.map((each) => (
        <input key={each} type="hidden" name="id" value={each} />
      ))}
      <div className="field send-camera">
        <label htmlFor={`${id}-camera`}>Take a photo</label>
        <input
          id={`${id}-camera`}
          type="file"
          name="file"
          accept="image/*"
          capture="environment"
          onChange={choose}
        />
      </div>
      <div className="field">
        <label htmlFor={`${id}-files`}>Choose photos or a drawing</label>
        <input
          id={`${id}-files`}
          type="file"
          name="file"
          multiple
          accept={accepted}
          aria-describedby={`${id}-hint`}
          onChange={choose}
        />
        <span className="hint" id={`${id}-hint`}>
          JPEG or PNG, a drawing also as PDF; at most {mostMb} MB each, {pictureLimits.filesAtOnce} at once.
          Where it was taken is not kept.
        </span>
      </div>
      {chosen.length > 0 ? (
        <ul className="send-files" aria-label="Chosen files">
          {chosen.map((each) => (
            <FileLine
              key={each.id}
              chosen={each}
              {...(busy || each.state === 'kept'
                ? {}
                : { onDrop: () => setChosen((before) => before.filter(({ id }) => id !== each.id)) })}
            />
          ))}
        </ul>
      ) : null}
      <p
        ref={told}
        tabIndex={-1}
        role="status"
        className={
          settled ? `notice ${kept === 0 ? 'wrong' : kept < chosen.length ? 'look' : 'done'}` : 'quiet'
        }
        hidden={chosen.length === 0}
      >
        {busy
          ? `Sending ${chosen.length - left.length + 1} of ${chosen.length}`
          : settled
            ? `${kept} of ${chosen.length} kept.`
            : again
              ? 'Not all of them came through.'
              : ''}
      </p>
      <fieldset className="field">
        <legend>What it is</legend>
        <div className="choices">
          <label>
            <input type="radio" name="kind" value="photo" defaultChecked />
            Photo
          </label>
          <label>
            <input type="radio" name="kind" value="drawing" />
            Drawing
          </label>
        </div>
      </fieldset>
      <div className="field">
        <label htmlFor={`${id}-view`}>Fixed view</label>
        <input
          id={`${id}-view`}
          type="text"
          name="view"
          defaultValue={view}
          list={`${id}-views`}
          maxLength={80}
          autoComplete="off"
          aria-describedby={`${id}-view-hint`}
        />
        <datalist id={`${id}-views`}>
          {views.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
        <span className="hint" id={`${id}-view-hint`}>
          "floor from the front"; the same name each time lays the years side by side
        </span>
      </div>
      <div className="field">
        <label htmlFor={`${id}-caption`}>Caption</label>
        <input id={`${id}-caption`} type="text" name="caption" maxLength={500} autoComplete="off" />
      </div>
      <div className="field">
        <label htmlFor={`${id}-taken`}>Taken on</label>
        <input
          id={`${id}-taken`}
          type="date"
          name="takenOn"
          max={today}
          aria-describedby={`${id}-taken-hint`}
        />
        <span className="hint" id={`${id}-taken-hint`}>
          blank: the day that the photo itself names, else today
        </span>
      </div>
      {complaint ? (
        <p className="notice wrong" role="alert">
          {complaint}
        </p>
      ) : null}
      <div className="acts">
        {settled && !busy ? (
          <a className="btn" href={here}>
            Send more
          </a>
        ) : (
          <button type="submit" className="btn primary" aria-disabled={busy}>
            {busy ? 'Sending…' : again ? 'Send again' : 'Send'}
          </button>
        )}
      </div>
    </form>
  )
}

/** A file as it was chosen; one that is too large is told before it is sent. */
function judged(file: File, id: string): Chosen {
  const large = file.size > pictureLimits.mostBytes
  const empty = file.size === 0
  const says = large
    ? [`${sizeWords(file.size)}; at most ${mostMb} MB are taken. Save it smaller.`]
    : empty
      ? ['The file is empty; choose it again, or take the photo anew.']
      : []
  return { id, file, state: large || empty ? 'refused' : 'waiting', share: 0, says }
}

const stateWords = {
  waiting: 'to be sent',
  sending: 'sending',
  kept: 'kept',
  refused: 'not taken',
  lost: 'not sent',
} as const

function FileLine({
  chosen: { file, state, share, says },
  onDrop,
}: {
  readonly chosen: Chosen
  readonly onDrop?: () => void
}) {
  return (
    <li>
      <span>
        <b>{file.name}</b>{' '}
        <span className="soft">
          {sizeWords(file.size)},{' '}
          {state === 'sending' && share >= 1 ? 'being turned and made smaller' : stateWords[state]}
        </span>
      </span>
      {onDrop ? (
        <button type="button" className="btn plain" onClick={onDrop} aria-label={`Leave out ${file.name}`}>
          leave out
        </button>
      ) : (
        <span className={state === 'kept' ? 'good' : 'soft'}>{state === 'kept' ? 'kept' : ''}</span>
      )}
      {state === 'sending' ? <progress value={share} max={1} aria-label={`Sending ${file.name}`} /> : null}
      {says.map((each) => (
        <span key={each} className={state === 'kept' ? 'note' : 'wrong'}>
          {each}
        </span>
      ))}
    </li>
  )
}

'use client'
import { useEffect, useRef, useState } from 'react'
import { planDrawing, sectionDrawing } from '#lib/core/drawing/index'
import { type Loop, middleOfLoop, placeWords } from '#lib/core/geometry/index'
import type { PatchInput } from '#lib/core/repair/types'
import { figure } from '#lib/core/units'
import { type Preview, previewSketch } from '../(shop)/patches/new/actions'
import { DisplayList } from './drawing/display-list'
import { chooseOne } from './fields'
import { Findings } from './findings'
import { PlyTable } from './patch-plies'
import { Working } from './working'

const pauseMs = 400

/** What the sketch in the form beside would give, worked out while it is typed. The last answer stays until the next. */
export function LivePreview() {
  const room = useRef<HTMLDivElement>(null)
  const [preview, setPreview] = useState<Preview | null>(null)
  const [last, setLast] = useState<Extract<Preview, { ok: true }> | null>(null)
  const [missing, setMissing] = useState<readonly Missing[]>([])
  const [touched, setTouched] = useState(false)
  const [pending, setPending] = useState(false)

  useEffect(() => {
    // A refused form is set up anew, so it is looked for at every change.
    const around = room.current?.parentElement
    if (!around) return
    let timer: ReturnType<typeof setTimeout> | undefined
    let asked = 0
    const ask = (event?: Event) => {
      if (event) setTouched(true)
      clearTimeout(timer)
      timer = setTimeout(async () => {
        const form = around.querySelector('form')
        if (!form) return
        asked += 1
        const mine = asked
        setPending(true)
        try {
          const answer = await previewSketch(new FormData(form))
          if (mine !== asked) return
          setPreview(answer)
          setMissing(answer.ok ? [] : missingOf(form, answer.fields))
          if (answer.ok) {
            setLast(answer)
            takeOutline(form, answer)
          }
        } catch {
          if (mine === asked)
            setPreview({
              ok: false,
              message: 'No connection to the shop; the sketch can still be filled in',
              fields: {},
            })
        } finally {
          if (mine === asked) setPending(false)
        }
      }, pauseMs)
    }
    around.addEventListener('input', ask)
    around.addEventListener('change', ask)
    ask()
    return () => {
      clearTimeout(timer)
      around.removeEventListener('input', ask)
      around.removeEventListener('change', ask)
    }
  }, [])

  const result = last?.outcome.ok ? last.outcome.result : null
  return (
    <div className="preview stack-gap" ref={room} aria-busy={pending}>
      <div role="status">
        {touched && preview && !preview.ok ? (
          <div className="notice look">
            <p>{preview.message}</p>
            <ul className="hint-list">
              {missing.map(({ name, says }) => (
                <li key={`${name} ${says}`}>
                  {name ? `${name}: ` : ''}
                  {says}
                </li>
              ))}
            </ul>
          </div>
        ) : null}
        {preview?.ok && !preview.outcome.ok ? <p className="notice wrong">{preview.outcome.reason}</p> : null}
        {preview?.ok && preview.outline && preview.outline.findings.length > 0 ? (
          <div className="notice">
            <p className="note">Read from the outline:</p>
            <Findings findings={preview.outline.findings} />
          </div>
        ) : null}
        {pending ? <p className="note">Working it out…</p> : null}
      </div>
      {result && last ? (
        <>
          <div className="sheet" style={{ padding: 10 }}>
            <DisplayList
              id="preview-plan"
              list={planDrawing(result.value, last.input, { kind: 'screen', widthPx: 720, maxHeightPx: 520 })}
            />
          </div>
          <dl className="figures">
            <div>
              <dt>Middle of the opening</dt>
              <dd className="place-words">{middleWords(result.value.opening.outer, last.input)}</dd>
            </div>
            <div>
              <dt>
                Scarf length
                <div className="note">
                  by ratio {figure(last.input.taper.ratio)} : 1 it is{' '}
                  {figure(result.value.lengths.byRatioMm, 1)} mm, by {figure(last.input.taper.mmPerPly)} mm a
                  ply {figure(result.value.lengths.byMmPerPlyMm, 1)} mm;{' '}
                  {result.value.lengths.governs === 'ratio'
                    ? 'the ratio governs'
                    : 'millimetres a ply govern'}
                </div>
              </dt>
              <dd>
                {figure(result.value.lengths.lengthMm, 1)} mm, {figure(result.value.lengths.ratioReached, 1)}{' '}
                : 1
              </dd>
            </div>
            <div>
              <dt>Built / measured</dt>
              <dd>
                {figure(result.value.builtThicknessMm, 2)} /{' '}
                {result.value.lengths.measuredThicknessMm === null
                  ? 'not measured'
                  : figure(result.value.lengths.measuredThicknessMm, 2)}{' '}
                mm
              </dd>
            </div>
          </dl>
          <Findings findings={result.findings} />
          <DisplayList
            id="preview-section"
            list={sectionDrawing(result.value, last.input, {
              kind: 'screen',
              widthPx: 720,
              maxHeightPx: null,
            })}
          />
          <PlyTable plan={result.value} />
          <Working steps={result.working} />
        </>
      ) : (
        <p className="empty">
          The plan is drawn here as soon as side, opening and place are given: plies, section, findings.
          {touched || missing.length === 0
            ? null
            : ` Still to give: ${missing.map(({ name }) => name).join(', ')}.`}
        </p>
      )}
    </div>
  )
}

function middleWords(outer: Loop, { area }: PatchInput): string {
  return placeWords(middleOfLoop(outer), area, area.dowels, 'print')
}

interface Missing {
  readonly name: string
  readonly says: string
}

/** What keeps the sketch from being worked out, by the words that stand at the fields. */
function missingOf(form: HTMLFormElement, fields: Readonly<Record<string, string>>): Missing[] {
  return Object.entries(fields).map(([field, says]) => {
    const found = form.elements.namedItem(field)
    const first = found instanceof RadioNodeList ? found[0] : found
    const words =
      found instanceof RadioNodeList
        ? (first as Element | undefined)?.parentElement?.closest('fieldset')?.querySelector('legend')
        : (first as HTMLInputElement | null)?.labels?.[0]?.firstChild
    // A field that is out of sight stands for what is drawn in its place.
    if (first instanceof Element && first.closest('[hidden]'))
      return { name: 'Opening', says: chooseOne(says) }
    return { name: words?.textContent ?? '', says: chooseOne(says) }
  })
}

/** A file that was read becomes coordinates in the form, so that it need not be sent again. */
function takeOutline(form: HTMLFormElement, answer: Extract<Preview, { ok: true }>): void {
  const file = form.elements.namedItem('outlineFile') as HTMLInputElement | null
  const text = form.elements.namedItem('outlineText') as HTMLTextAreaElement | null
  const unit = form.elements.namedItem('outlineUnit') as HTMLSelectElement | null
  const kind = new FormData(form).get('opening.kind')
  if (kind !== 'outline' || !answer.outline || !file?.files?.length || !text || !unit) return
  text.value = answer.outline.text
  unit.value = 'mm'
  file.value = ''
}

'use client'
import { useEffect, useRef, useState } from 'react'
import { planDrawing, sectionDrawing } from '#lib/core/drawing/index'
import { figure } from '#lib/core/units'
import { type Preview, previewSketch } from '../(shop)/patches/new/actions'
import { DisplayList } from './drawing/display-list'
import { Findings } from './findings'
import { PlyTable } from './patch-plies'
import { Working } from './working'

const pauseMs = 400

/** What the sketch in the form beside would give, worked out while it is typed. The last answer stays until the next. */
export function LivePreview() {
  const room = useRef<HTMLDivElement>(null)
  const [preview, setPreview] = useState<Preview | null>(null)
  const [last, setLast] = useState<Extract<Preview, { ok: true }> | null>(null)
  const [pending, setPending] = useState(false)

  useEffect(() => {
    const form = room.current?.parentElement?.querySelector('form')
    if (!form) return
    let timer: ReturnType<typeof setTimeout> | undefined
    let asked = 0
    const ask = () => {
      clearTimeout(timer)
      timer = setTimeout(async () => {
        asked += 1
        const mine = asked
        setPending(true)
        try {
          const answer = await previewSketch(new FormData(form))
          if (mine !== asked) return
          setPreview(answer)
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
    form.addEventListener('input', ask)
    form.addEventListener('change', ask)
    ask()
    return () => {
      clearTimeout(timer)
      form.removeEventListener('input', ask)
      form.removeEventListener('change', ask)
    }
  }, [])

  const result = last?.outcome.ok ? last.outcome.result : null
  return (
    <div className="preview stack-gap" ref={room} aria-busy={pending}>
      <div role="status">
        {preview && !preview.ok ? (
          <div className="notice look">
            <p>{preview.message}</p>
            <ul className="hint-list">
              {Object.entries(preview.fields).map(([field, says]) => (
                <li key={field}>{says}</li>
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
        </p>
      )}
    </div>
  )
}

/** A file that was read becomes coordinates in the form, so that it need not be sent again. */
function takeOutline(form: HTMLFormElement, answer: Extract<Preview, { ok: true }>): void {
  const file = form.elements.namedItem('outlineFile') as HTMLInputElement | null
  const text = form.elements.namedItem('outlineText') as HTMLTextAreaElement | null
  const unit = form.elements.namedItem('outlineUnit') as HTMLSelectElement | null
  if (!answer.outline || !file?.files?.length || !text || !unit) return
  text.value = answer.outline.text
  unit.value = 'mm'
  file.value = ''
}

'use client'
import type { Route } from 'next'
import { useRouter } from 'next/navigation'
import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react'
import { type Hit, hitKindWords, longestAsked } from '#lib/core/search/index'
import { hitHref } from './hit-href'
import './head-search.css'

/** Typed slower than this, each letter is looked up. */
const pauseMs = 160

interface Suggested {
  readonly of: string
  readonly hits: readonly Hit[]
}

const none: Suggested = { of: '', hits: [] }

/** What the shop suggests for some letters; null when it could not be asked or was asked something else meanwhile. */
async function suggestionsFor(typed: string, signal: AbortSignal): Promise<Suggested | null> {
  try {
    const answer = await fetch(`/api/v1/find?brief&q=${encodeURIComponent(typed)}`, { signal })
    if (!answer.ok) return null
    const { groups } = (await answer.json()) as { groups: { hits: Hit[] }[] }
    return { of: typed, hits: groups.flatMap(({ hits }) => hits).slice(0, 9) }
  } catch {
    return null
  }
}

/** Whether keys are meant for what somebody is typing into. */
function typing(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable || /^(INPUT|SELECT|TEXTAREA)$/.test(target.tagName))
  )
}

/**
 * The search in the page head: a plain form that leads to /find. With script it suggests while one types, is reached by "/"
 * and left by Escape.
 */
export function HeadSearch({ lead }: { readonly lead: boolean }) {
  const router = useRouter()
  const id = useId()
  const input = useRef<HTMLInputElement>(null)
  const [typed, setTyped] = useState('')
  const [suggested, setSuggested] = useState(none)
  const [open, setOpen] = useState(false)
  const [at, setAt] = useState(-1)

  useEffect(() => {
    const focusOn = (event: globalThis.KeyboardEvent) => {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey || typing(event.target)) return
      event.preventDefault()
      input.current?.focus()
      input.current?.select()
    }
    document.addEventListener('keydown', focusOn)
    return () => document.removeEventListener('keydown', focusOn)
  }, [])

  useEffect(() => {
    const asked = typed.trim()
    setAt(-1)
    if (asked === '') {
      setSuggested(none)
      return
    }
    const stop = new AbortController()
    const timer = setTimeout(async () => {
      const found = await suggestionsFor(asked, stop.signal)
      if (found && !stop.signal.aborted) setSuggested(found)
    }, pauseMs)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [typed])

  const asked = typed.trim()
  const shown = open && asked !== '' && suggested.of !== ''
  const options = [
    ...suggested.hits.map((hit) => ({ key: `${hit.kind}-${hit.id}`, hit, href: hitHref(hit, lead) })),
    { key: 'all', hit: null, href: `/find?q=${encodeURIComponent(asked)}&all=1` as Route },
  ]

  const close = () => {
    setOpen(false)
    setAt(-1)
  }
  const go = (href: Route) => {
    close()
    input.current?.blur()
    router.push(href)
  }
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Escape') {
      event.preventDefault()
      if (shown) close()
      else input.current?.blur()
    } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      if (!shown) return setOpen(true)
      event.preventDefault()
      // -1 is the box itself, where the typed words stand.
      const count = options.length + 1
      setAt((now) => ((now + 1 + (event.key === 'ArrowDown' ? 1 : count - 1)) % count) - 1)
    } else if (event.key === 'Enter') {
      const chosen = shown ? options[at] : undefined
      if (chosen === undefined && asked === '') return
      event.preventDefault()
      go(chosen?.href ?? (`/find?q=${encodeURIComponent(asked)}` as Route))
    }
  }

  return (
    <search className="find">
      <form action="/find">
        <input
          ref={input}
          type="search"
          name="q"
          maxLength={longestAsked}
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          role="combobox"
          aria-label="Find anything in the book"
          aria-keyshortcuts="/"
          aria-autocomplete="list"
          aria-expanded={shown}
          aria-controls={`${id}-list`}
          aria-activedescendant={shown && at >= 0 ? `${id}-${at}` : undefined}
          placeholder="Find a code, place, name…"
          onChange={({ target }) => {
            setTyped(target.value)
            setOpen(true)
          }}
          onFocus={() => setOpen(true)}
          onBlur={close}
          onKeyDown={onKeyDown}
        />
        <span className="key" aria-hidden="true">
          /
        </span>
        <button type="submit" className="quiet" tabIndex={-1}>
          Find
        </button>
      </form>
      <span className="quiet" role="status">
        {shown
          ? `${suggested.hits.length} ${suggested.hits.length === 1 ? 'suggestion' : 'suggestions'}`
          : ''}
      </span>
      <div id={`${id}-list`} className="suggested" role="listbox" aria-label="Suggestions" hidden={!shown}>
        {options.map(({ key, hit, href }, index) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are the box's, which keeps the focus
          <div
            key={key}
            id={`${id}-${index}`}
            role="option"
            tabIndex={-1}
            aria-selected={index === at}
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => go(href)}
          >
            {hit ? (
              <>
                <span>
                  <b>{hit.of && hit.kind === 'patch' ? `${hit.of.code} ${hit.title}` : hit.title}</b>{' '}
                  {hit.name}
                </span>
                <span className="note">
                  {[hitKindWords[hit.kind], hit.state, hit.place].filter(Boolean).join(' · ')}
                </span>
              </>
            ) : (
              <span>
                {suggested.hits.length === 0 ? 'Look through notes and the log for' : 'Everything for'}{' '}
                <b>{asked}</b>
              </span>
            )}
          </div>
        ))}
      </div>
    </search>
  )
}

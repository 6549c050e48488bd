'use client'
import { useRef, useState } from 'react'
import { ActionForm } from '../../ui/action-form'
import { ChoiceField, Hidden, type Option, TextField } from '../../ui/fields'
import { makeTheToken } from './actions'

/** The form that makes a token; afterwards the token stands in its place, this once. */
export function TokenForm({
  defaults,
  roles,
  origin,
}: {
  readonly defaults: Readonly<Record<string, string>>
  readonly roles: readonly Option[]
  readonly origin: string
}) {
  return (
    <ActionForm
      action={makeTheToken}
      defaults={defaults}
      submit="Make it"
      done={(value) => <MadeToken {...(value as Made)} origin={origin} />}
    >
      <Hidden name="id" />
      <Hidden name="token" />
      <TextField
        name="name"
        label="What it is for"
        hint="as “logger at the oven”; its entries stand under this name"
      />
      <ChoiceField name="role" label="Role" options={roles} />
    </ActionForm>
  )
}

interface Made {
  readonly token: string
  readonly name: string
  readonly role: string
}

function MadeToken({ token, name, role, origin }: Made & { readonly origin: string }) {
  const field = useRef<HTMLInputElement>(null)
  const [copied, setCopied] = useState(false)
  const copy = async () => {
    field.current?.select()
    try {
      await navigator.clipboard.writeText(token)
      setCopied(true)
    } catch {
      // Over plain http there is no clipboard to ask for; the older way needs none.
      setCopied(document.execCommand('copy'))
    }
  }
  return (
    <div className="notice done form made-token" role="status">
      <p>
        <b>
          “{name}” may do what a {role} may.
        </b>{' '}
        Copy its token now: it is shown this once, only its fingerprint is kept.
      </p>
      <div className="field">
        <label htmlFor="made-token">Token</label>
        <input
          id="made-token"
          ref={field}
          type="text"
          className="mono"
          readOnly
          value={token}
          onFocus={({ target }) => target.select()}
        />
      </div>
      <div className="acts">
        <button type="button" className="btn primary" onClick={copy}>
          Copy
        </button>
        <span className="note" role="status">
          {copied ? 'Copied' : ''}
        </span>
      </div>
      <div>
        <p className="note">For example, the moulds and how they stand:</p>
        <pre className="working">{`curl -H "Authorization: Bearer ${token}" \\\n  ${origin}/api/v1/moulds`}</pre>
      </div>
      <p>
        <a href={`/people?made=${encodeURIComponent(name)}#tokens`}>I have it: back to the tokens</a>
      </p>
    </div>
  )
}

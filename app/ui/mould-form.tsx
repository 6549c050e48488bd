import { randomUUID } from 'node:crypto'
import { listParts } from '#lib/services/parts'
import { listPatterns } from '#lib/services/patterns'
import { listSetNames } from '#lib/services/sets'
import { listStacks } from '#lib/services/stores'
import type { SignedIn } from '#lib/web/session'
import { addPartHere, addPatternHere, addSetHere } from '../(shop)/moulds/actions'
import { ActionForm, type FormAct } from './action-form'
import { Hidden, TextField } from './fields'
import type { MouldChoices } from './mould-fields'

/** What a mould may be tied to, by code and name. */
export async function mouldChoices(actor: SignedIn): Promise<MouldChoices> {
  const [parts, patterns, sets, stacks] = await Promise.all([
    listParts(actor, {}),
    listPatterns(actor, {}),
    listSetNames(actor, {}),
    listStacks(actor, {}),
  ])
  const named = (rows: readonly { id: string; code: string; name: string }[]) =>
    rows.map((row) => ({ value: row.id, label: `${row.code}, ${row.name}` }))
  return { parts: named(parts), patterns: named(patterns), sets: named(sets), stacks: named(stacks) }
}

/** How the values of a mould's choices read. */
export function wordsOf(choices: MouldChoices): Readonly<Record<string, string>> {
  const all = [...choices.parts, ...choices.patterns, ...choices.sets, ...choices.stacks]
  return { true: 'yes', ...Object.fromEntries(all.map(({ value, label }) => [value, label])) }
}

/** A part, a pattern or a split mould that is not in the book yet, added on the way. */
export function AddTies({ back }: { readonly back: string }) {
  const ties: readonly { readonly what: string; readonly action: FormAct; readonly hint: string }[] = [
    { what: 'part', action: addPartHere, hint: 'for example LH' },
    { what: 'pattern', action: addPatternHere, hint: 'for example LH-P' },
    { what: 'split mould', action: addSetHere, hint: 'the pieces together, for example LH-SET' },
  ]
  return (
    <aside className="stack-gap" aria-label="Not in the list yet">
      <p className="note">Not in the list yet? Add it here first; then it is chosen.</p>
      {ties.map(({ what, action, hint }) => (
        <details key={what}>
          <summary>Add a {what}</summary>
          <div style={{ marginTop: 10 }}>
            <ActionForm
              action={action}
              defaults={{ id: randomUUID(), code: '', name: '', back }}
              submit={`Add the ${what}`}
            >
              <Hidden name="id" />
              <Hidden name="back" />
              <TextField name="code" label="Code" hint={hint} />
              <TextField name="name" label="Name" />
            </ActionForm>
          </div>
        </details>
      ))}
    </aside>
  )
}

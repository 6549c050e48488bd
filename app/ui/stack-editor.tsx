'use client'
import { useFieldArray, useWatch } from 'react-hook-form'
import { isMirrored, stackUp } from '#lib/core/laminate/index'
import type { PlyMaterial } from '#lib/core/laminate/types'
import { figure, parseQuantity } from '#lib/core/units'
import { StackInput } from '#lib/schema/material'
import { type RecordAct, RecordField, RecordForm } from './record-form'
import { Working } from './working'

export interface StackMaterial {
  readonly id: string
  readonly code: string
  readonly material: PlyMaterial
}

interface PlyText {
  readonly materialId: string
  readonly directionDeg: string
}

/** A stack, ply by ply from the tool face: ply 1 is the surface ply. */
export function StackEditor({
  action,
  defaults,
  materials,
  submit,
}: {
  readonly action: RecordAct
  readonly defaults: Record<string, unknown>
  readonly materials: readonly StackMaterial[]
  readonly submit: string
}) {
  return (
    <RecordForm schema={StackInput} action={action} defaults={defaults} submit={submit}>
      <div className="field-row">
        <RecordField name="code" label="Code" hint="for example M181" />
        <RecordField name="name" label="Name" />
      </div>
      <RecordField name="note" label="Note" rows={2} />
      <Plies materials={materials} />
    </RecordForm>
  )
}

function Plies({ materials }: { readonly materials: readonly StackMaterial[] }) {
  const { fields, append, insert, remove, move } = useFieldArray({ name: 'plies' })
  const plies = (useWatch({ name: 'plies' }) ?? []) as readonly PlyText[]
  const fresh = (): PlyText => plies.at(-1) ?? { materialId: materials[0]?.id ?? '', directionDeg: '0' }
  const options = materials.map((each) => ({ value: each.id, label: `${each.code}, ${each.material.name}` }))
  return (
    <fieldset className="form rule-top">
      <legend>Plies, from the tool face to the back</legend>
      <ol className="ply-rows">
        {fields.map((field, index) => (
          <li key={field.id}>
            <span className="mono">{index + 1}</span>
            <RecordField
              name={`plies.${index}.materialId`}
              label={`Material of ply ${index + 1}`}
              options={options}
              quiet
            />
            <RecordField
              name={`plies.${index}.directionDeg`}
              label={`Direction of ply ${index + 1}, degrees`}
              numeric
              quiet
            />
            <span className="acts">
              <button
                type="button"
                className="btn plain"
                onClick={() => index > 0 && move(index, index - 1)}
                aria-label={`Ply ${index + 1} up`}
              >
                up
              </button>
              <button
                type="button"
                className="btn plain"
                onClick={() => index < fields.length - 1 && move(index, index + 1)}
                aria-label={`Ply ${index + 1} down`}
              >
                down
              </button>
              <button
                type="button"
                className="btn plain"
                onClick={() => insert(index + 1, { ...(plies[index] ?? fresh()) })}
                aria-label={`Ply ${index + 1} again below`}
              >
                again
              </button>
              <button
                type="button"
                className="btn plain"
                onClick={() => remove(index)}
                aria-label={`Take ply ${index + 1} out`}
              >
                out
              </button>
            </span>
          </li>
        ))}
      </ol>
      <div className="acts">
        <button type="button" className="btn" onClick={() => append({ ...fresh() })}>
          Add a ply
        </button>
        <button
          type="button"
          className="btn"
          onClick={() => append([...plies].reverse().map((ply) => ({ ...ply })))}
        >
          Mirror what stands here
        </button>
      </div>
      <Summary plies={plies} materials={materials} />
    </fieldset>
  )
}

function Summary({
  plies,
  materials,
}: {
  readonly plies: readonly PlyText[]
  readonly materials: readonly StackMaterial[]
}) {
  const known = plies.flatMap((ply) => {
    const material = materials.find((each) => each.id === ply.materialId)?.material
    const direction = parseQuantity(ply.directionDeg ?? '', 'angle')
    return material && direction.ok ? [{ material, directionDeg: direction.value }] : []
  })
  if (known.length === 0 || known.length < plies.length) {
    return (
      <p className="note">
        Thickness and balance stand here as soon as every ply has its material and direction.
      </p>
    )
  }
  const built = stackUp(known)
  return (
    <div aria-live="polite">
      <p>
        <b>{figure(built.thicknessMm, 2)} mm</b> built, {known.length} plies;{' '}
        {isMirrored(known) ? (
          'mirrored about its middle'
        ) : (
          <span className="due">not mirrored about its middle: it will warp</span>
        )}
      </p>
      <Working steps={built.working} />
    </div>
  )
}

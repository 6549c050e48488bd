import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { textOf } from '#lib/schema/form'
import { StackInput } from '#lib/schema/material'
import { listMaterials, listStacks, plyMaterial, stackInputOf } from '#lib/services/stores'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../ui/link'
import { NotYours } from '../../../../ui/not-yours'
import { StackEditor } from '../../../../ui/stack-editor'
import { saveNewStack, saveStack } from '../../actions'
import '../../stores.css'

export const metadata: Metadata = { title: 'Stack' }

/** A stack to be changed, or a new one at /stores/stacks/new. */
export default async function StackPage({ params }: PageProps<'/stores/stacks/[id]'>) {
  const actor = await requireActor(`/stores/stacks/${(await params).id}`)
  const { id } = await params
  if (actor.role !== 'lead') return <NotYours>A lead looks after stacks.</NotYours>
  const [materials, stacks] = await Promise.all([listMaterials(actor, {}), listStacks(actor, {})])
  const stored = id === 'new' ? null : stacks.find((stack) => stack.id === id)
  if (stored === undefined) notFound()
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> / {stored?.code ?? 'a new stack'}
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{stored?.name ?? 'Add a stack'}</h1>
      {materials.length === 0 ? (
        <p className="empty">
          A stack is made of materials.{' '}
          <Link href={'/stores/materials/new' as Route}>Add the first material</Link>
        </p>
      ) : (
        <StackEditor
          action={stored ? saveStack : saveNewStack}
          materials={materials.map((material) => ({
            id: material.id,
            code: material.code,
            material: plyMaterial(material),
          }))}
          defaults={
            stored
              ? { ...(textOf(StackInput, stackInputOf(stored)) as object), version: String(stored.version) }
              : {
                  id: randomUUID(),
                  code: '',
                  name: '',
                  note: '',
                  plies: [{ materialId: materials[0]?.id ?? '', directionDeg: '0' }],
                }
          }
          submit={stored ? 'Save' : 'Add the stack'}
        />
      )}
    </div>
  )
}

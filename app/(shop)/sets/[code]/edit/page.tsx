import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { textOf } from '#lib/schema/form'
import { MouldSetInput } from '#lib/schema/mould-set'
import { listParts } from '#lib/services/parts'
import { freeMoulds, readSetPage, type SetPage } from '#lib/services/sets'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../../ui/action-form'
import { NotYours } from '../../../../ui/not-yours'
import '../../../../ui/book-sheet.css'
import { Hidden, SelectField, TextField } from '../../../../ui/fields'
import { Link } from '../../../../ui/link'
import { SetEditor } from '../../../../ui/set-editor'
import { addThePiece, saveSet, takeThePieceOut } from '../../actions'

export const metadata: Metadata = { title: 'Change a split mould' }

export default async function EditSetPage({ params }: PageProps<'/sets/[code]/edit'>) {
  const code = decodeURIComponent((await params).code)
  const actor = await requireActor(`/sets/${encodeURIComponent(code)}/edit`)
  const page = await found(readSetPage(actor, { code }))
  if (!page) notFound()
  if (actor.role !== 'lead') return <NotYours>A lead changes split moulds.</NotYours>
  const { set } = page
  const [parts, free] = await Promise.all([listParts(actor, {}), freeMoulds(actor, {})])
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/sets' as Route}>Split moulds</Link> /{' '}
          <Link href={`/sets/${encodeURIComponent(set.code)}` as Route}>{set.code}</Link> / change
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{set.name}</h1>
      <Pieces
        set={set}
        free={free.map(({ id, code: own, name, version }) => ({
          value: `${id} ${version}`,
          label: `${own}, ${name}`,
        }))}
      />
      <div style={{ marginTop: 28 }}>
        <SetEditor
          key={set.version}
          action={saveSet}
          parts={parts.map(({ id, code: own, name }) => ({ value: id, label: `${own}, ${name}` }))}
          pieces={set.pieces.map((piece) => piece.code)}
          defaults={{ ...(textOf(MouldSetInput, set) as object), version: String(set.version) }}
          submit="Save"
        />
      </div>
    </>
  )
}

function Pieces({
  set,
  free,
}: {
  readonly set: SetPage['set']
  readonly free: readonly { readonly value: string; readonly label: string }[]
}) {
  const next = Math.max(0, ...set.pieces.map((piece) => piece.pieceNo)) + 1
  return (
    <section id="pieces" className="rule-top">
      <h2>Pieces</h2>
      {set.pieces.length === 0 ? (
        <p className="note">No piece yet. Each piece is a mould of its own, with its own log.</p>
      ) : (
        <table className="lines stacked" style={{ maxWidth: 900 }}>
          <tbody>
            {set.pieces.map((piece) => (
              <tr key={piece.id}>
                <td>
                  Piece {piece.pieceNo}:{' '}
                  <Link href={`/moulds/${encodeURIComponent(piece.code)}` as Route}>
                    <b>{piece.code}</b>
                  </Link>{' '}
                  {piece.name}
                </td>
                <td className="n list-acts">
                  <ActionForm
                    action={takeThePieceOut}
                    defaults={{
                      setId: set.id,
                      code: set.code,
                      mouldId: piece.id,
                      version: String(piece.version),
                    }}
                    submit={`Take ${piece.code} out`}
                  >
                    <Hidden name="setId" />
                    <Hidden name="code" />
                    <Hidden name="mouldId" />
                    <Hidden name="version" />
                  </ActionForm>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <details style={{ marginTop: 12 }} open={set.pieces.length === 0}>
        <summary>Add a piece</summary>
        <div className="narrow" style={{ marginTop: 10 }}>
          {free.length === 0 ? (
            <p className="note">Every mould is a piece of a split mould already.</p>
          ) : (
            <ActionForm
              key={set.pieces.length}
              action={addThePiece}
              defaults={{ setId: set.id, code: set.code, mould: '', pieceNo: String(next) }}
              submit="Add the piece"
            >
              <Hidden name="setId" />
              <Hidden name="code" />
              <div className="field-row">
                <SelectField
                  name="mould"
                  label="Mould"
                  options={[{ value: '', label: 'choose a mould' }, ...free]}
                />
                <TextField name="pieceNo" label="Number of the piece" numeric />
              </div>
            </ActionForm>
          )}
          <p className="note" style={{ marginTop: 8 }}>
            Not in the book yet? <Link href={`/moulds/new?set=${set.id}` as Route}>Add it as a mould</Link>.
          </p>
        </div>
      </details>
    </section>
  )
}

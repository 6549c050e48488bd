import 'server-only'
import { db } from './db'

export interface SetPieceName {
  readonly id: string
  readonly code: string
  readonly name: string
  readonly pieceNo: number
}

/** The pieces of a split mould in the order of their numbers. */
export const piecesOfSet = (setId: string): Promise<SetPieceName[]> =>
  db().sql<SetPieceName[]>`
    select id, code, name, piece_no as "pieceNo" from mould where set_id = ${setId} order by piece_no`

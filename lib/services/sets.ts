import * as z from 'zod'
import type { PullStrokes } from '#lib/core/drawing/index'
import {
  beforeLayUp,
  type Matter,
  type MouldCounts,
  type MouldStanding,
  mouldStanding,
  type SetStanding,
  setStanding,
  setStrokes,
} from '#lib/core/log/index'
import { asked } from '#lib/schema/fields'
import { AddPiece, MouldSetInput, TakePieceOut } from '#lib/schema/mould-set'
import { Refusal } from '#lib/store/errors'
import {
  addPiece as insertPiece,
  addSet as insertSet,
  patchesOfPieces,
  pullsOfPieces,
  freeMoulds as readFreeMoulds,
  readSetByCode,
  listSets as readSets,
  type SetPiece,
  type StoredSet,
  takePieceOut as takeOut,
  changeSet as updateSet,
} from '#lib/store/sets'
import { countsSince } from '#lib/store/tally'
import { codeTaken, type ShopContext, shopContext, told } from './shop'
import { asking, everyone, leads, verb } from './verb'

/** A piece with how it stands and what comes before its next lay-up. */
export interface PieceStanding {
  readonly piece: SetPiece
  readonly counts: MouldCounts
  readonly standing: MouldStanding
  readonly matters: readonly Matter[]
}

export interface SetRow {
  readonly set: StoredSet
  readonly pieces: readonly PieceStanding[]
  /** Null: it has no piece yet. */
  readonly standing: SetStanding | null
}

export interface SetPage extends SetRow {
  readonly strokes: PullStrokes
  readonly context: ShopContext
}

async function rowsOf(sets: readonly StoredSet[], context: ShopContext): Promise<SetRow[]> {
  const ids = sets.flatMap((set) => set.pieces.map((piece) => piece.id))
  const counts = await countsSince(ids, context.season?.startsOn ?? null)
  return sets.map((set) => {
    const pieces = set.pieces.flatMap((piece): PieceStanding[] => {
      const counted = counts.get(piece.id)
      if (!counted) return []
      return [
        {
          piece,
          counts: counted,
          standing: mouldStanding(counted),
          matters: beforeLayUp(counted, context.shop.rules.upkeep, context.today, context.now),
        },
      ]
    })
    return {
      set,
      pieces,
      standing: setStanding(pieces.map(({ piece, standing }) => ({ code: piece.code, standing }))),
    }
  })
}

/** Codes and names, for a choice. */
export const listSetNames = verb('sets.names', everyone, z.object({}), async () =>
  (await readSets()).map(({ id, code, name }) => ({ id, code, name })),
)

/** Split moulds with the states of their pieces. */
export const listSets = verb('sets.list', everyone, z.object({}), async () =>
  rowsOf(await readSets(), await shopContext()),
)

/** Everything that a split mould's page shows. */
export const readSetPage = asking(
  'sets.read',
  everyone,
  z.object({ code: asked() }),
  async (_actor, { code }): Promise<SetPage> => {
    const set = await readSetByCode(code)
    if (!set) throw new Refusal(`There is no split mould ${code}`, { status: 404 })
    const context = await shopContext()
    const ids = set.pieces.map((piece) => piece.id)
    const [[row], pulls, patches] = await Promise.all([
      rowsOf([set], context),
      pullsOfPieces(ids),
      patchesOfPieces(ids),
    ])
    const codeOf = new Map(set.pieces.map((piece) => [piece.id, piece.code]))
    const named = patches.map(({ mouldId, ...patch }) => ({ ...patch, code: codeOf.get(mouldId) ?? '' }))
    return {
      ...(row ?? { set, pieces: [], standing: null }),
      strokes: setStrokes(pulls, named, context.seasons),
      context,
    }
  },
)

export const freeMoulds = verb('sets.free-moulds', leads, z.object({}), () => readFreeMoulds())

const setRules = { mould_set_code_key: codeTaken('split mould') }
const pieceRules = {
  mould_set_piece_key: { field: 'pieceNo', says: 'Another piece of this split mould has this number' },
}

export const addSet = verb('sets.add', leads, MouldSetInput, (actor, input) =>
  told(insertSet(actor, input), setRules),
)
export const changeSet = verb(
  'sets.change',
  leads,
  MouldSetInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updateSet(actor, version, input), setRules),
)
export const addPiece = verb('sets.add-piece', leads, AddPiece, (actor, input) =>
  told(insertPiece(actor, input), pieceRules),
)
export const takePieceOut = verb('sets.take-piece-out', leads, TakePieceOut, (actor, input) =>
  takeOut(actor, input),
)

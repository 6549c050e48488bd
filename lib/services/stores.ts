import * as z from 'zod'
import { inForceOn } from '#lib/core/stores/index'
import { MaterialInput, StackInput } from '#lib/schema/material'
import { Refusal } from '#lib/store/errors'
import { listPrices } from '#lib/store/rates'
import {
  addMaterial as insertMaterial,
  addStack as insertStack,
  listMaterials as readMaterials,
  readMaterial as readOneMaterial,
  listStacks as readStacks,
  changeMaterial as updateMaterial,
  changeStack as updateStack,
} from '#lib/store/stores'
import { shopContext, told } from './shop'
import { lotsWithStanding } from './stores-lots'
import { asking, everyone, leads, verb } from './verb'

const codeTaken = (what: string) => ({
  field: 'code',
  says: `Another ${what} has this code; codes are compared without case`,
})
const materialRules = { material_code_key: codeTaken('material') }
const stackRules = { stack_code_key: codeTaken('stack') }

export const listMaterials = verb('materials.list', everyone, z.object({}), () => readMaterials())

/** A material with its lots, its prices, and the stacks that are made of it. */
export const readMaterial = asking(
  'materials.read',
  everyone,
  z.object({ id: z.uuid() }),
  async (_actor, { id }) => {
    const material = await readOneMaterial(id)
    if (!material) throw new Refusal('There is no such material', { status: 404 })
    const { today, shop } = await shopContext()
    const of = { kind: 'material', id } as const
    const [lots, prices, stacks] = await Promise.all([
      lotsWithStanding({ of }, today),
      listPrices(of),
      readStacks(),
    ])
    return {
      material,
      lots,
      prices,
      price: inForceOn(prices, today),
      stacks: stacks.filter((stack) => stack.plies.some((ply) => ply.material.id === id)),
      today,
      currency: shop.currency,
    }
  },
)
export const addMaterial = verb('materials.add', leads, MaterialInput, (actor, input) =>
  told(insertMaterial(actor, input), materialRules),
)
export const changeMaterial = verb(
  'materials.change',
  leads,
  MaterialInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updateMaterial(actor, version, input), materialRules),
)

export const listStacks = verb('stacks.list', everyone, z.object({}), () => readStacks())
export const addStack = verb('stacks.add', leads, StackInput, (actor, input) =>
  told(insertStack(actor, input), stackRules),
)
export const changeStack = verb(
  'stacks.change',
  leads,
  StackInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updateStack(actor, version, input), stackRules),
)
export { plyMaterial, stackInputOf, stackPlies } from '#lib/store/stores'

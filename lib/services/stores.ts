import * as z from 'zod'
import { MaterialInput, StackInput } from '#lib/schema/material'
import {
  addMaterial as insertMaterial,
  addStack as insertStack,
  listMaterials as readMaterials,
  listStacks as readStacks,
  changeMaterial as updateMaterial,
  changeStack as updateStack,
} from '#lib/store/stores'
import { told } from './shop'
import { everyone, leads, verb } from './verb'

const codeTaken = (what: string) => ({
  field: 'code',
  says: `Another ${what} has this code; codes are compared without case`,
})
const materialRules = { material_code_key: codeTaken('material') }
const stackRules = { stack_code_key: codeTaken('stack') }

export const listMaterials = verb('materials.list', everyone, z.object({}), () => readMaterials())
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

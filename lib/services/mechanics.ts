import { joinResult } from '#lib/core/joint/index'
import { plateResult } from '#lib/core/laminate/plate/index'
import { JoinRequest, PlateRequest } from '#lib/schema/mechanics'
import { Refusal } from '#lib/store/errors'
import { everyone, verb } from './verb'

/** Stiffness, constants, expansion and warp of a stack; keeps nothing. */
export const computePlate = verb('plate.compute', everyone, PlateRequest, async (_actor, request) =>
  withinReason(() => plateResult(request)),
)

/** Stresses of a bonded joint by elementary methods; keeps nothing. */
export const computeJoin = verb('join.compute', everyone, JoinRequest, async (_actor, request) =>
  withinReason(() => joinResult(request)),
)

/** Figures that no material can have are the asker's mistake. */
function withinReason<Value>(compute: () => Value): Value {
  try {
    return compute()
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(`Can't be: ${error.message}`, { status: 422 })
    throw error
  }
}

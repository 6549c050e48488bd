import type * as z from 'zod'
import type { Actor } from '#lib/schema/actor'
import type { Role } from '#lib/schema/shop'
import { Refusal } from '#lib/store/errors'

/**
 * Something that the shop can do, with who may do it. The one place where roles are enforced: pages, actions and
 * routes reach the store through verbs only.
 */
export interface Verb<Input, Output> {
  (actor: Actor, input: Input): Promise<Output>
  /** "log.write": thing and act. */
  readonly verbName: string
  readonly roles: readonly Role[]
  readonly schema: z.ZodType<Input>
}

export const everyone = ['lead', 'laminator', 'viewer'] as const
export const hands = ['lead', 'laminator'] as const
export const leads = ['lead'] as const

/** Makes a verb. Its input has been through `schema` before it gets here. */
export function verb<Schema extends z.ZodType, Output>(
  verbName: string,
  roles: readonly Role[],
  schema: Schema,
  run: (actor: Actor, input: z.output<Schema>) => Promise<Output>,
): Verb<z.output<Schema>, Output> {
  const act = async (actor: Actor, input: z.output<Schema>) => {
    if (!roles.includes(actor.role)) {
      throw new Refusal(`A ${actor.role} may not do this; ask a ${roles[0] ?? 'lead'}`, { status: 403 })
    }
    return run(actor, input)
  }
  return Object.assign(act, { verbName, roles, schema: schema as z.ZodType<z.output<Schema>> })
}

/**
 * A verb that reads what an address names: a code, an id, words to find. Pages hand those over as they stand there, so
 * they go through the schema here; what can't be the name of anything is not there.
 */
export function asking<Schema extends z.ZodType, Output>(
  verbName: string,
  roles: readonly Role[],
  schema: Schema,
  run: (actor: Actor, input: z.output<Schema>) => Promise<Output>,
): Verb<z.output<Schema>, Output> {
  return verb(verbName, roles, schema, async (actor, input) => {
    const understood = schema.safeParse(input)
    if (!understood.success) throw new Refusal('There is nothing of that name', { status: 404 })
    return run(actor, understood.data)
  })
}

import 'server-only'
import { Refusal } from '#lib/store/errors'

/** What a verb answers, or null where it says that there is no such thing; a page shows "not found" then. */
export async function found<Value>(read: Promise<Value>): Promise<Value | null> {
  try {
    return await read
  } catch (error) {
    if (error instanceof Refusal && error.status === 404) return null
    throw error
  }
}

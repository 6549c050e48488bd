import { databaseAnswers } from '#lib/store/db'

/** Whether the shop can work: it can when the database answers. Open to everyone, and tells nothing else. */
export async function readHealth(): Promise<{
  readonly ok: boolean
  readonly database: 'answers' | 'does not answer'
}> {
  const ok = await databaseAnswers()
  return { ok, database: ok ? 'answers' : 'does not answer' }
}

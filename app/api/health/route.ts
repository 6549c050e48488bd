import { readHealth } from '#lib/services/health'
import { answer } from '#lib/web/route'

export const dynamic = 'force-dynamic'

/** Open to everyone: whether the shop can work. */
export async function GET(): Promise<Response> {
  const health = await readHealth()
  return answer(health, health.ok ? 200 : 503)
}

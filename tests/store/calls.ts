import { createHash, randomUUID } from 'node:crypto'
import { beforeAll, expect } from 'vitest'
import type * as z from 'zod'
import { ProblemAnswer } from '#lib/schema/answers/shared'
import { db } from '#lib/store/db'

/** The routes as a script meets them: requests in, answers out. */

export const tokens = { lead: '', laminator: '', viewer: '' }

/** A token for each role, before the tests of one file. */
export function withTokens(): void {
  beforeAll(async () => {
    for (const role of ['lead', 'laminator', 'viewer'] as const) {
      tokens[role] = `mw_${randomUUID()}`
      const hash = createHash('sha256').update(tokens[role]).digest('hex')
      await db()
        .sql`insert into api_token (name, role, token_hash) values (${`rig ${role}`}, ${role}, ${hash})`
    }
  })
}

export const host = 'shop.example:3000'

export interface Sent {
  readonly body?: BodyInit | null
  readonly headers?: Readonly<Record<string, string>>
  readonly token?: string | null
}

export function request(
  path: string,
  method: 'GET' | 'POST',
  { body = null, headers = {}, token = tokens.laminator }: Sent = {},
): Request {
  const bearer = token === null ? {} : { authorization: `Bearer ${token}` }
  return new Request(`http://${host}${path}`, {
    method,
    headers: { host, ...bearer, ...headers },
    body,
    ...(body instanceof ReadableStream ? { duplex: 'half' } : {}),
  } as RequestInit)
}

export const get = (path: string, sent: Sent = {}) => request(path, 'GET', sent)

export const post = (path: string, value: unknown, sent: Sent = {}) =>
  request(path, 'POST', {
    ...sent,
    body: JSON.stringify(value),
    headers: { 'content-type': 'application/json', ...sent.headers },
  })

export const at = (code: string) => ({ params: Promise.resolve({ code }) })

/** An answer that is all that its description says, and nothing beside it. */
export async function answered<Schema extends z.ZodType>(
  answer: Response,
  schema: Schema,
  status = 200,
): Promise<z.output<Schema>> {
  const body = await answer.json()
  expect(answer.status, JSON.stringify(body)).toBe(status)
  expect(answer.headers.get('cache-control')).toBe('no-store')
  const parsed = schema.parse(body)
  expect(parsed).toEqual(body)
  return parsed
}

export async function problem(answer: Response, status: number): Promise<z.output<typeof ProblemAnswer>> {
  expect(answer.headers.get('content-type')).toBe('application/problem+json')
  const body = await answered(answer, ProblemAnswer, status)
  expect(body.status).toBe(status)
  return body
}

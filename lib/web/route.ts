import 'server-only'
import type { Actor } from '#lib/schema/actor'
import { fieldErrors } from '#lib/schema/form'
import type { Verb } from '#lib/services/verb'
import { refusalOf } from '#lib/store/errors'
import { actorByToken } from '#lib/store/tokens'
import { BodyFault } from './body'
import { logEvent } from './log'
import { signedInBy } from './signed-in'

/** A problem document (RFC 9457). */
export function problem(
  status: number,
  title: string,
  detail: string,
  extra: Readonly<Record<string, unknown>> = {},
): Response {
  const headers = new Headers({ 'content-type': 'application/problem+json', 'cache-control': 'no-store' })
  if (status === 401) headers.set('www-authenticate', 'Bearer')
  return Response.json({ type: 'about:blank', title, status, detail, ...extra }, { status, headers })
}

function refusalTitle(status: number): string {
  return status === 507 ? 'No room' : status === 503 ? 'Not now' : 'Refused'
}

/** A plain answer, never kept by a cache on the way. */
export function answer(body: unknown, status = 200): Response {
  return Response.json(body, { status, headers: { 'cache-control': 'no-store' } })
}

/** A step of the path as it was meant: "M%C3%9C-1" -> "MÜ-1". */
export function pathText(step: string): string {
  try {
    return decodeURIComponent(step)
  } catch {
    return step
  }
}

/**
 * Who calls: a bearer token, or the session's cookie. A write by cookie must come from our own pages: its Origin
 * is the host that it was sent to.
 */
async function callerOf(request: Request): Promise<Actor | Response> {
  const header = request.headers.get('authorization')
  if (header) {
    const token = /^Bearer\s+(\S+)$/i.exec(header)?.[1]
    const actor = token ? await actorByToken(token) : null
    return (
      actor ??
      problem(401, 'Not signed in', 'This token is not known or was ended; make one with npm run token')
    )
  }
  const actor = await signedInBy(request.headers)
  if (!actor) return problem(401, 'Not signed in', 'Sign in, or send "Authorization: Bearer <token>"')
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    const origin = request.headers.get('origin') ?? ''
    const host = request.headers.get('x-forwarded-host') ?? request.headers.get('host')
    // A page in a sandbox sends the origin "null", which is no address.
    if (!URL.canParse(origin) || new URL(origin).host !== host) {
      return problem(403, 'Refused', "A change by session must come from the shop's own pages")
    }
  }
  return actor
}

/**
 * Carries out a verb for a route: who calls, input through the verb's schema, the answer by `respond`. Every
 * refusal becomes a problem document.
 */
export async function serve<Input, Output>(
  request: Request,
  verb: Verb<Input, Output>,
  readInput: () => Promise<unknown> | unknown,
  respond: (output: Output) => Response | Promise<Response> = (output) => answer(output),
): Promise<Response> {
  try {
    const caller = await callerOf(request)
    if (caller instanceof Response) return caller
    const parsed = verb.schema.safeParse(await readInput())
    if (!parsed.success) {
      return problem(422, 'Input refused', 'Some of what was sent is not right', {
        fields: fieldErrors(parsed.error),
      })
    }
    return await respond(await verb(caller, parsed.data))
  } catch (error) {
    const refusal = refusalOf(error)
    // What the shop did not mean to refuse stands in its log as well.
    if (refusal && refusal !== error)
      logEvent('error', 'route failed', { verb: verb.verbName, error: String(error) })
    if (refusal) {
      return problem(refusal.status, refusalTitle(refusal.status), refusal.message, {
        fields: refusal.fields,
        ...(refusal.current ? { current: refusal.current } : {}),
        ...(refusal.stored ? { stored: refusal.stored } : {}),
      })
    }
    if (error instanceof BodyFault) return problem(error.status, error.title, error.message)
    logEvent('error', 'route failed', { verb: verb.verbName, error: String(error) })
    return problem(500, 'Something broke', 'Nothing was saved. The log of the server tells more.')
  }
}

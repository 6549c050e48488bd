import 'server-only'
import type { PrintedSheet } from '#lib/services/sheets'
import type { Verb } from '#lib/services/verb'
import { serve } from './route'

type SheetVerb = Verb<{ patchId: string; versionNo: number | null; origin: string }, PrintedSheet>

/** Where people reach the shop: APP_URL when the start was told, else as this request came. */
function originOf(request: Request): string {
  if (process.env.APP_URL) return new URL(process.env.APP_URL).origin
  const host = request.headers.get('host') ?? new URL(request.url).host
  return `${request.headers.get('x-forwarded-proto') ?? 'http'}://${host}`
}

/** A printed sheet of a plan as a PDF to be looked at or saved. */
export function serveSheet(request: Request, verb: SheetVerb, patchId: string): Promise<Response> {
  const version = new URL(request.url).searchParams.get('v')
  return serve(
    request,
    verb,
    () => ({ patchId, versionNo: version === null ? null : Number(version), origin: originOf(request) }),
    ({ fileName, bytes }) =>
      new Response(new Uint8Array(bytes), {
        headers: {
          'content-type': 'application/pdf',
          'content-disposition': `inline; filename*=UTF-8''${encodeURIComponent(fileName)}`,
          'cache-control': 'no-store',
        },
      }),
  )
}

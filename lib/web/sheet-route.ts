import 'server-only'
import type { PrintedSheet } from '#lib/services/sheets'
import type { Verb } from '#lib/services/verb'
import { serve } from './route'

type SheetVerb<Input> = Verb<
  Input & { patchId: string; versionNo: number | null; origin: string },
  PrintedSheet
>

/** Where people reach the shop: APP_URL when the start was told, else as this request came. */
function originOf(request: Request): string {
  if (process.env.APP_URL) return new URL(process.env.APP_URL).origin
  const host = request.headers.get('host') ?? new URL(request.url).host
  return `${request.headers.get('x-forwarded-proto') ?? 'http'}://${host}`
}

/**
 * A plan's sheet or outlines as a file: a PDF to be looked at or saved, others to be saved. ?v= is the version, other
 * questions (?paper=, ?view=) go to the verb by their names.
 */
export function serveSheet<Input>(
  request: Request,
  verb: SheetVerb<Input>,
  patchId: string,
): Promise<Response> {
  const { v, ...asked } = Object.fromEntries(new URL(request.url).searchParams)
  return serve(
    request,
    verb,
    () => ({ ...asked, patchId, versionNo: v === undefined ? null : Number(v), origin: originOf(request) }),
    ({ fileName, mediaType, bytes }) => {
      const shown = mediaType === 'application/pdf' ? 'inline' : 'attachment'
      return new Response(new Uint8Array(bytes), {
        headers: {
          'content-type': mediaType,
          'content-disposition': `${shown}; filename*=UTF-8''${encodeURIComponent(fileName)}`,
          'cache-control': 'no-store',
          'x-content-type-options': 'nosniff',
        },
      })
    },
  )
}

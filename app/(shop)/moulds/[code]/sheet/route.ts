import { printMouldSheet } from '#lib/services/mould-sheet'
import { pathText, serve } from '#lib/web/route'

/** The mould's sheet as a PDF: ?area=, ?view=back, ?old=no and ?paper= as on the mould's page. */
export async function GET(
  request: Request,
  { params }: RouteContext<'/moulds/[code]/sheet'>,
): Promise<Response> {
  const { code } = await params
  const asked = Object.fromEntries(new URL(request.url).searchParams)
  return serve(
    request,
    printMouldSheet,
    () => ({ ...asked, code: pathText(code) }),
    ({ fileName, mediaType, bytes }) =>
      new Response(new Uint8Array(bytes), {
        headers: {
          'content-type': mediaType,
          'content-disposition': `inline; filename*=UTF-8''${encodeURIComponent(fileName)}`,
          'cache-control': 'no-store',
          'x-content-type-options': 'nosniff',
        },
      }),
  )
}

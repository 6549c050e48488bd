import { writeSvg } from '#lib/services/sheets'
import { serveSheet } from '#lib/web/sheet-route'

export async function GET(
  request: Request,
  { params }: RouteContext<'/patches/[id]/outlines.svg'>,
): Promise<Response> {
  return serveSheet(request, writeSvg, (await params).id)
}

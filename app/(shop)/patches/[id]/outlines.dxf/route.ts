import { writeDxf } from '#lib/services/sheets'
import { serveSheet } from '#lib/web/sheet-route'

export async function GET(
  request: Request,
  { params }: RouteContext<'/patches/[id]/outlines.dxf'>,
): Promise<Response> {
  return serveSheet(request, writeDxf, (await params).id)
}

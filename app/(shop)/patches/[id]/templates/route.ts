import { printTemplates } from '#lib/services/sheets'
import { serveSheet } from '#lib/web/sheet-route'

export async function GET(
  request: Request,
  { params }: RouteContext<'/patches/[id]/templates'>,
): Promise<Response> {
  return serveSheet(request, printTemplates, (await params).id)
}

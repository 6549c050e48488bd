import { printBenchSheet } from '#lib/services/sheets'
import { serveSheet } from '#lib/web/sheet-route'

export async function GET(
  request: Request,
  { params }: RouteContext<'/patches/[id]/bench-sheet'>,
): Promise<Response> {
  return serveSheet(request, printBenchSheet, (await params).id)
}

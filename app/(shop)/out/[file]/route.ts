import { serveTable } from '#lib/web/table-route'

export async function GET(request: Request, { params }: RouteContext<'/out/[file]'>): Promise<Response> {
  return serveTable(request, (await params).file)
}

import { serveOutline } from '#lib/web/outline-request'

export const POST = serveOutline

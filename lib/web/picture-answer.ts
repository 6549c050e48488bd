import 'server-only'
import type * as z from 'zod'
import type { AddedPictureAnswer, PictureAnswer } from '#lib/schema/answers/picture'
import type { AddedPicture, readPictureFile } from '#lib/services/pictures'

type StoredPicture = AddedPicture['picture']

export function pictureAnswer(picture: StoredPicture): z.input<typeof PictureAnswer> {
  const { id, kind, mimeType, widthPx, heightPx, sizeBytes, takenOn, caption, view, entryId, byName } =
    picture
  return {
    id,
    kind,
    mimeType,
    widthPx,
    heightPx,
    sizeBytes,
    takenOn,
    caption,
    view,
    entryId,
    byName,
    writtenAt: picture.writtenAt,
    version: picture.version,
    fullPath: `/pictures/${id}/full`,
    smallPath: widthPx === null ? null : `/pictures/${id}/small`,
  }
}

export function addedAnswer({ picture, notices }: AddedPicture): z.input<typeof AddedPictureAnswer> {
  return { ...pictureAnswer(picture), notices: [...notices] }
}

const endings = { 'image/jpeg': 'jpg', 'image/png': 'png', 'application/pdf': 'pdf' } as const

/** "LH-P 2026-10-21 floor from the front.jpg", without signs that a file's name can't have. */
function fileName({ subjectCode, takenOn, caption, view, kind, mimeType }: StoredPicture): string {
  const words = [subjectCode, takenOn, caption || view || kind].join(' ')
  const clean = words
    .replace(/[\p{Cc}"*/:<>?\\|]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
  // Not through the middle of a sign of two halves.
  return `${[...clean].slice(0, 120).join('')}.${endings[mimeType]}`
}

/**
 * The bytes of a picture. They never change, so a copy may be kept by the one who is signed in; a PDF is only ever
 * saved, and neither may run anything.
 */
export function fileAnswer(
  request: Request,
  { picture, size, bytes }: Awaited<ReturnType<typeof readPictureFile>>,
): Response {
  const etag = `"${picture.id}-${size}"`
  const headers = {
    etag,
    'cache-control': 'private, max-age=86400',
    vary: 'Cookie, Authorization',
    'x-content-type-options': 'nosniff',
    'content-security-policy': "default-src 'none'; sandbox",
    'cross-origin-resource-policy': 'same-origin',
  }
  const seen = (request.headers.get('if-none-match') ?? '')
    .split(',')
    .map((each) => each.trim().replace(/^W\//, ''))
  if (seen.includes(etag)) return new Response(null, { status: 304, headers })
  const placed = picture.mimeType === 'application/pdf' ? 'attachment' : 'inline'
  return new Response(bytes, {
    headers: {
      ...headers,
      'content-type': picture.mimeType,
      'content-length': String(bytes.length),
      'content-disposition': `${placed}; filename*=UTF-8''${encodeURIComponent(fileName(picture)).replace(/['()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`)}`,
    },
  })
}

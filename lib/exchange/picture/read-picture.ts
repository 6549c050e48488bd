import type { IsoDate } from '#lib/core/dates'
import { pictureLimits } from '#lib/schema/picture'
import { advice, cutOff, emptyFile } from './advice'
import { isMovingPng, pictureContent } from './content'
import { exifDay } from './exif-date'
import { type PictureAnswer, type PicturePool, picturePool } from './pool'

export interface PictureSides {
  readonly fullSidePx: number
  readonly smallSidePx: number
}

/** A picture as it is kept: turned right, in sRGB, without a word about place, camera or person. */
export interface ReadPicture {
  readonly mimeType: 'image/jpeg' | 'image/png' | 'application/pdf'
  /** Of `full`; null for a PDF. */
  readonly widthPx: number | null
  readonly heightPx: number | null
  readonly full: Uint8Array<ArrayBuffer>
  /** Null for a PDF. */
  readonly small: Uint8Array<ArrayBuffer> | null
  /** The day on the camera's clock, where the file tells one. */
  readonly takenOn: IsoDate | null
  readonly notices: readonly string[]
}

export type PictureReading =
  | { readonly ok: true; readonly picture: ReadPicture }
  /** unable: not the file's fault; sent again later it may well be taken. */
  | { readonly ok: false; readonly reason: string; readonly unable: boolean }

const MB = 1e6

/**
 * Reads an uploaded photo or drawing, by its content alone, and makes what is kept of it: at most 2560 px for the
 * full picture and 480 px for the small one, JPEG or, where that is smaller, PNG; a PDF as it is. Never throws for
 * what is wrong with a file: `reason` says what it is and the cure.
 */
export async function readPicture(
  bytes: Uint8Array<ArrayBuffer>,
  sides: PictureSides = pictureLimits,
  pool: PicturePool = picturePool(),
): Promise<PictureReading> {
  if (bytes.length === 0) return refused(emptyFile)
  if (bytes.length > pictureLimits.mostBytes) {
    return refused(
      `The file has ${megabytes(bytes.length)} MB; at most ${pictureLimits.mostBytes / MB} MB are taken. ` +
        'Save it smaller: 12 megapixels show everything.',
    )
  }
  const content = pictureContent(bytes)
  if (content === 'pdf') return readPdf(bytes)
  if (content in advice) return refused(advice[content as keyof typeof advice])
  const { mostPixels, leastSidePx } = pictureLimits
  const answer = await pool({
    bytes,
    fullSidePx: sides.fullSidePx,
    smallSidePx: sides.smallSidePx,
    mostPixels,
    leastSidePx,
  })
  if (!answer.ok) return told(answer)
  const { mimeType, widthPx, heightPx, full, small, exif, pages } = answer
  const moving = pages > 1 || (content === 'png' && isMovingPng(bytes))
  return {
    ok: true,
    picture: {
      mimeType,
      widthPx,
      heightPx,
      full,
      small,
      takenOn: exif === null ? null : exifDay(exif),
      notices: moving ? ['The file holds several pictures; only the first one is kept'] : [],
    },
  }
}

function refused(reason: string): PictureReading {
  return { ok: false, reason, unable: false }
}

const megabytes = (bytes: number) => (bytes / MB).toFixed(1)
const inWords = (count: number) => count.toLocaleString('en-GB')

function told(answer: Extract<PictureAnswer, { ok: false }>): PictureReading {
  switch (answer.fault) {
    case 'pixels': {
      const size = `${inWords(answer.widthPx)} x ${inWords(answer.heightPx)} pixels`
      const millions = inWords(Math.round((answer.widthPx * answer.heightPx) / 1e6))
      const most = pictureLimits.mostPixels / 1e6
      return refused(
        `The picture has ${size}, ${millions} megapixels; at most ${most} megapixels are taken. Save it smaller, then send that.`,
      )
    }
    case 'small':
      return refused(
        `The picture has only ${answer.widthPx} x ${answer.heightPx} pixels; at least ${pictureLimits.leastSidePx} on each side are needed. ` +
          'It may be a thumbnail: send the picture itself.',
      )
    case 'broken':
      return refused(cutOff)
    case 'died':
      return refused(
        "The picture can't be opened: its reader gave up on it. Save it anew as JPEG with another program, then send that.",
      )
    case 'late':
      return refused('The picture takes too long to open. Save it anew as JPEG or smaller, then send that.')
    case 'unready':
      return {
        ok: false,
        unable: true,
        reason:
          'The reader of pictures does not start on this machine; the log of the server tells why. Nothing was saved.',
      }
    case 'busy':
      return {
        ok: false,
        unable: true,
        reason:
          'Too many pictures come in at once. Nothing of this one was saved: send it again in a minute.',
      }
  }
}

/** A drawing as PDF is kept as it is. Its end must be there, or it came over in part. */
function readPdf(bytes: Uint8Array<ArrayBuffer>): PictureReading {
  const end = String.fromCharCode(...bytes.subarray(-4096))
  if (!end.includes('%%EOF')) return refused(cutOff)
  return {
    ok: true,
    picture: {
      mimeType: 'application/pdf',
      widthPx: null,
      heightPx: null,
      full: bytes,
      small: null,
      takenOn: null,
      notices: [],
    },
  }
}

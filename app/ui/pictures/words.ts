import { shortDate } from '#lib/core/dates'
import type { StoredPicture } from './picture'

/** What a picture is called where it stands alone: its caption, else its view, else what it is. */
export function titleOf({ caption, view, kind }: StoredPicture): string {
  return caption || view || (kind === 'drawing' ? 'Drawing' : 'Photo')
}

/** For those who don't see it: what it shows, of what, when. */
export function altOf(picture: StoredPicture, today: string): string {
  const { kind, subjectCode, view, caption, takenOn } = picture
  const what = kind === 'drawing' ? 'Drawing' : 'Photo'
  const of = [`${what} of ${subjectCode}`, view, shortDate(takenOn, today)].filter(Boolean).join(', ')
  return caption ? `${of}: ${caption}` : of
}

/** "340 kB", "2.4 MB" */
export function sizeWords(bytes: number): string {
  return bytes < 950_000 ? `${Math.max(1, Math.round(bytes / 1000))} kB` : `${(bytes / 1e6).toFixed(1)} MB`
}

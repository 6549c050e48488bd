import type { Route } from 'next'
import type { ReactNode } from 'react'
import { shortDate } from '#lib/core/dates'
import type { PicturePage } from '#lib/services/pictures'
import { Link } from '../link'
import { altOf, sizeWords, titleOf } from './words'
import './pictures.css'

export type StoredPicture = PicturePage['picture']

/** The picture itself, small or full; a PDF as a sheet with its words. */
export function PictureImage({
  picture,
  size,
  today,
  eager = false,
}: {
  readonly picture: StoredPicture
  readonly size: 'small' | 'full'
  readonly today: string
  readonly eager?: boolean
}) {
  if (picture.widthPx === null || picture.heightPx === null) {
    return (
      <span className="pic-sheet">
        <b>PDF</b>
        <span className="note">{sizeWords(picture.sizeBytes)}</span>
        <span className="quiet">{altOf(picture, today)}</span>
      </span>
    )
  }
  return (
    // biome-ignore lint/performance/noImgElement: the bytes are made to size already and are for who is signed in
    <img
      src={`/pictures/${picture.id}/${size}`}
      alt={altOf(picture, today)}
      width={picture.widthPx}
      height={picture.heightPx}
      loading={eager ? 'eager' : 'lazy'}
      decoding="async"
    />
  )
}

/** A picture in a list: leads to its own page; day, caption and view below it. */
export function PictureFigure({
  picture,
  today,
  children,
}: {
  readonly picture: StoredPicture
  readonly today: string
  /** Stands under its words. */
  readonly children?: ReactNode
}) {
  const { caption, view, kind } = picture
  return (
    <figure className="pic" id={`p-${picture.id}`}>
      <Link href={`/pictures/${picture.id}` as Route} className="pic-frame">
        <PictureImage picture={picture} size="small" today={today} />
      </Link>
      <figcaption>
        <b>{shortDate(picture.takenOn, today)}</b> {caption || (view ? '' : titleOf(picture))}
        {view || kind === 'drawing' ? (
          <span className="note pic-note">
            {[kind === 'drawing' ? 'drawing' : '', view].filter(Boolean).join(', ')}
          </span>
        ) : null}
        {children}
      </figcaption>
    </figure>
  )
}

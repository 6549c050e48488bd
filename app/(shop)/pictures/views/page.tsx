import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { pictureSubjects } from '#lib/schema/picture'
import { readPictureSubject } from '#lib/services/pictures'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { addressOf } from '../../../ui/page-address'
import { SideBySide } from '../../../ui/pictures/side-by-side'

export const metadata: Metadata = { title: 'Same view over time' }

export default async function PicturesPage({ searchParams }: PageProps<'/pictures/views'>) {
  const actor = await requireActor(addressOf('/pictures/views', await searchParams))
  const query = await searchParams
  const on = pictureSubjects.find((each) => each === query.on)
  const onId = text(query.id)
  if (!on || onId === null) notFound()
  const subject = await found(readPictureSubject(actor, { on, onId, entryId: null }))
  if (!subject) notFound()
  const named = { on, onId, code: subject.code }
  return (
    <SideBySide
      subject={named}
      asked={{ view: text(query.view), left: text(query.left), right: text(query.right) }}
    />
  )
}

function text(value: string | string[] | undefined): string | null {
  return typeof value === 'string' ? value : null
}

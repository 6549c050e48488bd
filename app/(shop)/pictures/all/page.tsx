import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { pictureSubjects } from '#lib/schema/picture'
import { readPictureSubject } from '#lib/services/pictures'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { addressOf } from '../../../ui/page-address'
import { AllPictures } from '../../../ui/pictures/all-pictures'

export const metadata: Metadata = { title: 'Photos and drawings' }

export default async function PicturesPage({ searchParams }: PageProps<'/pictures/all'>) {
  const actor = await requireActor(addressOf('/pictures/all', await searchParams))
  const query = await searchParams
  const on = pictureSubjects.find((each) => each === query.on)
  const onId = text(query.id)
  if (!on || onId === null) notFound()
  const subject = await found(readPictureSubject(actor, { on, onId, entryId: null }))
  if (!subject) notFound()
  const named = { on, onId, code: subject.code }
  return <AllPictures subject={named} view={text(query.view)} show={text(query.show)} />
}

function text(value: string | string[] | undefined): string | null {
  return typeof value === 'string' ? value : null
}

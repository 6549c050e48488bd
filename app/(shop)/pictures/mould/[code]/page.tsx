import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { readPictureSubjectByCode } from '#lib/services/pictures'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { AllPictures } from '../../../../ui/pictures/all-pictures'

export async function generateMetadata({ params }: PageProps<'/pictures/mould/[code]'>): Promise<Metadata> {
  return { title: `Photos, ${decodeURIComponent((await params).code)}` }
}

export default async function MouldPicturesPage({
  params,
  searchParams,
}: PageProps<'/pictures/mould/[code]'>) {
  const code = decodeURIComponent((await params).code)
  const actor = await requireActor(`/pictures/mould/${encodeURIComponent(code)}`)
  const subject = await found(readPictureSubjectByCode(actor, { code }))
  if (!subject) notFound()
  const { view, show } = await searchParams
  return (
    <AllPictures
      subject={subject}
      view={typeof view === 'string' ? view : null}
      show={typeof show === 'string' ? show : null}
    />
  )
}

import { requireActor } from '#lib/web/session'
import { Link } from '../link'
import { addAddress, type NamedSubject } from './addresses'

/** The way to add a photo, for who may: to a thing, beside an entry, or of a view that was taken before. */
export async function AddPhoto({
  subject,
  entryId,
  view,
  like,
  className = 'btn',
  children = 'Add a photo',
  label,
}: {
  readonly subject: Pick<NamedSubject, 'on' | 'onId'>
  readonly entryId?: string
  readonly view?: string
  /** Id of the picture whose view is taken again. */
  readonly like?: string
  readonly className?: string
  readonly children?: string
  /** For those who don't see what it stands beside. */
  readonly label?: string
}) {
  const actor = await requireActor()
  if (actor.role === 'viewer') return null
  return (
    <Link
      {...(className ? { className } : {})}
      href={addAddress(subject, { entryId: entryId ?? null, view: view ?? null, like: like ?? null })}
      aria-label={label}
    >
      {children}
    </Link>
  )
}

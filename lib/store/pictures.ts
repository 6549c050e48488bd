import 'server-only'
import { createHash } from 'node:crypto'
import type { Actor } from '#lib/schema/actor'
import type {
  NewPicture,
  PictureChange,
  PictureKind,
  PictureSize,
  PictureSubject,
  PictureSubjectKind,
} from '#lib/schema/picture'
import { db, type Transaction } from './db'
import { Refusal } from './errors'
import type { PictureInclude, PictureWhereInput } from './generated/models'
import { changeSeen, createOnce, dateColumn, dayOf } from './once'

export interface StoredPicture extends PictureSubject {
  readonly id: string
  readonly kind: PictureKind
  readonly mimeType: 'image/jpeg' | 'image/png' | 'application/pdf'
  /** Null for a PDF. */
  readonly widthPx: number | null
  readonly heightPx: number | null
  /** Of the full picture. */
  readonly sizeBytes: number
  /** The shop's day that it shows. */
  readonly takenOn: string
  readonly caption: string
  readonly view: string
  /** Code and name of what it is with; a built part's serial and the name of its part. */
  readonly subjectCode: string
  readonly subjectName: string
  readonly entryId: string | null
  readonly byId: string | null
  readonly byName: string
  readonly writtenAt: string
  readonly putAwayAt: string | null
  readonly putAwayBecause: string | null
  readonly version: number
}

/** What is kept of an uploaded picture. */
export interface PictureContents {
  readonly mimeType: StoredPicture['mimeType']
  readonly widthPx: number | null
  readonly heightPx: number | null
  readonly full: Uint8Array<ArrayBuffer>
  readonly small: Uint8Array<ArrayBuffer> | null
}

const withSubject = {
  mould: { select: { code: true, name: true } },
  pattern: { select: { code: true, name: true } },
  set: { select: { code: true, name: true } },
  builtPart: { select: { serial: true, part: { select: { name: true } } } },
} satisfies PictureInclude

type Columns = {
  readonly mouldId: string | null
  readonly patternId: string | null
  readonly setId: string | null
  readonly builtPartId: string | null
}

const columnOf = { mould: 'mouldId', pattern: 'patternId', set: 'setId', part: 'builtPartId' } as const

function subjectColumns({ on, onId }: PictureSubject): Columns {
  const none = { mouldId: null, patternId: null, setId: null, builtPartId: null }
  return { ...none, [columnOf[on]]: onId }
}

const whereSubject = ({ on, onId }: PictureSubject): PictureWhereInput => ({ [columnOf[on]]: onId })

type Row = NonNullable<Awaited<ReturnType<typeof findRow>>>

const findRow = (tx: Pick<Transaction, 'picture'>, id: string) =>
  tx.picture.findUnique({ where: { id }, include: withSubject })

function subjectOf(row: Row): PictureSubject & { subjectCode: string; subjectName: string } {
  const of = (on: PictureSubjectKind, onId: string, code = '', name = '') => ({
    on,
    onId,
    subjectCode: code,
    subjectName: name,
  })
  if (row.mouldId) return of('mould', row.mouldId, row.mould?.code, row.mould?.name)
  if (row.patternId) return of('pattern', row.patternId, row.pattern?.code, row.pattern?.name)
  if (row.setId) return of('set', row.setId, row.set?.code, row.set?.name)
  return of('part', row.builtPartId ?? '', row.builtPart?.serial, row.builtPart?.part?.name)
}

function toPicture(row: Row): StoredPicture {
  return {
    ...subjectOf(row),
    id: row.id,
    kind: row.kind as PictureKind,
    mimeType: row.mimeType as StoredPicture['mimeType'],
    widthPx: row.widthPx,
    heightPx: row.heightPx,
    sizeBytes: row.sizeBytes,
    takenOn: dayOf(row.takenOn),
    caption: row.caption,
    view: row.view,
    entryId: row.entryId,
    byId: row.byId,
    byName: row.byName,
    writtenAt: row.writtenAt.toISOString(),
    putAwayAt: row.putAwayAt?.toISOString() ?? null,
    putAwayBecause: row.putAwayBecause,
    version: row.version,
  }
}

/** What was sent under an id, to be compared when it is sent again. */
function sentContent(input: NewPicture, sent: Uint8Array) {
  return { ...input, sha256: createHash('sha256').update(sent).digest('hex') }
}

/**
 * Stores a picture with its bytes, all or nothing. The same id with the same file and words again changes nothing;
 * with others it is refused. `sent` is the file as it came, `takenOn` the day that it shows.
 */
export function addPicture(
  actor: Actor,
  input: NewPicture,
  sent: Uint8Array,
  contents: PictureContents,
  takenOn: string,
): Promise<boolean> {
  const content = sentContent(input, sent)
  return createOnce(actor, 'picture', input.id, content, async (tx) => {
    await checkEntry(tx, input)
    const { mimeType, widthPx, heightPx, full, small } = contents
    await tx.picture.create({
      data: {
        ...subjectColumns(input),
        mimeType,
        widthPx,
        heightPx,
        id: input.id,
        kind: input.kind,
        caption: input.caption,
        view: await knownView(tx, input, input.view),
        takenOn: dateColumn(takenOn),
        entryId: input.entryId,
        sizeBytes: full.length,
        byId: actor.id,
        byName: actor.name,
        contentHash: content.sha256,
      },
    })
    const bytes = [{ pictureId: input.id, size: 'full', bytes: full }]
    if (small) bytes.push({ pictureId: input.id, size: 'small', bytes: small })
    // Without giving the bytes back: that would pass through a temporary file of the server, and a disk which is full
    // could then not even undo the write.
    await tx.pictureBytes.createMany({ data: bytes })
  })
}

/** The entry beside which a picture stands is of the same mould or pattern. */
async function checkEntry(tx: Transaction, { entryId, on, onId }: NewPicture): Promise<void> {
  if (entryId === null) return
  const belongs =
    on === 'mould' || on === 'pattern'
      ? await tx.logEntry.count({ where: { id: entryId, [columnOf[on]]: onId } })
      : 0
  if (belongs > 0) return
  throw new Refusal(
    `That entry is not in the log of this ${words[on]}; load the page again and choose anew`,
    {
      fields: { entryId: 'An entry of another log' },
    },
  )
}

const words = { mould: 'mould', pattern: 'pattern', set: 'split mould', part: 'part' } as const

/** A view that is known already keeps its spelling, so that the years stand side by side. */
async function knownView(tx: Transaction, subject: PictureSubject, view: string): Promise<string> {
  if (view === '') return ''
  const known = await tx.picture.findMany({
    where: { ...whereSubject(subject), view: { not: '' } },
    orderBy: { writtenAt: 'asc' },
    distinct: ['view'],
    select: { view: true },
  })
  // Compared here: the client's own comparison without case takes % and _ for any signs.
  const same = known.find((each) => each.view.toLowerCase() === view.toLowerCase())
  return same?.view ?? view
}

const newestFirst = [{ takenOn: 'desc' }, { writtenAt: 'desc' }, { id: 'asc' }] as const

/** Pictures of a mould, pattern, split mould or part, newest first; those that were put away only when asked for. */
export async function listPictures(
  subject: PictureSubject,
  { view, putAway = false, limit }: { view?: string; putAway?: boolean; limit?: number } = {},
): Promise<StoredPicture[]> {
  const rows = await db().prisma.picture.findMany({
    where: {
      ...whereSubject(subject),
      putAwayAt: putAway ? { not: null } : null,
      ...(view === undefined ? {} : { view }),
    },
    include: withSubject,
    orderBy: [...newestFirst],
    ...(limit === undefined ? {} : { take: limit }),
  })
  return rows.map(toPicture)
}

/** How many pictures there are beside those that were put away. */
export function countPictures(subject: PictureSubject): Promise<number> {
  return db().prisma.picture.count({ where: { ...whereSubject(subject), putAwayAt: null } })
}

/** Pictures that stand beside entries of a log, oldest first. */
export async function picturesBeside(subject: PictureSubject): Promise<StoredPicture[]> {
  const rows = await db().prisma.picture.findMany({
    where: { ...whereSubject(subject), putAwayAt: null, entryId: { not: null } },
    include: withSubject,
    orderBy: [{ takenOn: 'asc' }, { writtenAt: 'asc' }, { id: 'asc' }],
  })
  return rows.map(toPicture)
}

/** Names of the fixed views of a thing, each once. */
export async function listViews(subject: PictureSubject): Promise<string[]> {
  const rows = await db().prisma.picture.groupBy({
    by: ['view'],
    where: { ...whereSubject(subject), putAwayAt: null, view: { not: '' } },
    orderBy: { view: 'asc' },
  })
  return rows.map(({ view }) => view)
}

export async function readPicture(id: string): Promise<StoredPicture | null> {
  const row = await findRow(db().prisma, id)
  return row && toPicture(row)
}

/** The bytes of a picture in a size; null where there are none, as of the small size of a PDF. */
export async function readPictureBytes(
  id: string,
  size: PictureSize,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const [row] = await db().sql<{ bytes: Uint8Array<ArrayBuffer> }[]>`
    select bytes from picture_bytes where picture_id = ${id} and size = ${size}`
  return row?.bytes ?? null
}

/** A subject that a picture can be sent to: its code and name. */
export async function readSubject({
  on,
  onId: id,
}: PictureSubject): Promise<{ readonly code: string; readonly name: string } | null> {
  const { prisma } = db()
  const select = { code: true, name: true } as const
  if (on === 'mould') return prisma.mould.findUnique({ where: { id }, select })
  if (on === 'pattern') return prisma.pattern.findUnique({ where: { id }, select })
  if (on === 'set') return prisma.mouldSet.findUnique({ where: { id }, select })
  const part = await prisma.builtPart.findUnique({
    where: { id },
    select: { serial: true, part: { select: { name: true } } },
  })
  return part && { code: part.serial, name: part.part?.name ?? '' }
}

async function readIn(tx: Transaction, id: string): Promise<StoredPicture | null> {
  const row = await findRow(tx, id)
  return row && toPicture(row)
}

export const changePicture = (actor: Actor, { id, version, ...changed }: PictureChange) =>
  changeSeen(
    actor,
    'picture',
    id,
    (tx) => readIn(tx, id),
    async (tx) => {
      const stored = await readIn(tx, id)
      const view = stored ? await knownView(tx, stored, changed.view) : changed.view
      return tx.picture.updateMany({
        where: { id, version },
        data: {
          caption: changed.caption,
          // A view that only changes its capitals is meant so.
          view: stored && view === stored.view ? changed.view : view,
          takenOn: dateColumn(changed.takenOn),
          version: { increment: 1 },
        },
      })
    },
  )

/** Puts a picture away (`because` says why) or, with null, brings it back. Its bytes stay. */
export const setPutAway = (actor: Actor, id: string, version: number, because: string | null) =>
  changeSeen(
    actor,
    'picture',
    id,
    (tx) => readIn(tx, id),
    (tx) =>
      tx.picture.updateMany({
        where: { id, version },
        data: {
          putAwayAt: because === null ? null : new Date(),
          putAwayBecause: because,
          version: { increment: 1 },
        },
      }),
  )

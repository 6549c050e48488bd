import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll } from 'vitest'
import type { LogData } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import type { NewLogEntry } from '#lib/schema/log'
import type { FaceAreaInput, MouldInput, PatternInput } from '#lib/schema/mould'
import type { MouldSetInput } from '#lib/schema/mould-set'
import type { FirstLead } from '#lib/schema/people'
import { writeEntry } from '#lib/services/log'
import { addArea, addMould } from '#lib/services/moulds'
import { shopContext } from '#lib/services/shop'
import { addMaterial, addStack } from '#lib/services/stores'
import { mouldCounts } from '#lib/store/counts'
import { closeDatabase, db } from '#lib/store/db'
import { Refusal } from '#lib/store/errors'
import { addFirstLead, addPerson } from '#lib/store/people'
import { freshDatabase, type TestDatabase } from '#tests/support/database'

/** A shop of its own for a test file, with three people and one stack; everything in it is invented. */

export const password = 'a long enough sentence'

export const firstLead: FirstLead = {
  code: 'unused',
  shopName: 'Test shop',
  timeZone: 'Europe/Berlin',
  currency: 'EUR',
  name: 'Ada Lead',
  initials: 'AL',
  email: 'ada@shop.example',
  password,
}

export const ada: Actor = { id: '00000000-0000-4000-8000-0000000000a1', name: 'Ada Lead', role: 'lead' }
export const ben: Actor = { id: '00000000-0000-4000-8000-0000000000b2', name: 'Ben Lead', role: 'lead' }
export const lam: Actor = { id: '00000000-0000-4000-8000-0000000000c3', name: 'Lam Hands', role: 'laminator' }
export const vi: Actor = { id: '00000000-0000-4000-8000-0000000000d4', name: 'Vi Looks', role: 'viewer' }

export const surfaceId = '00000000-0000-4000-8000-000000000051'
export const bulkId = '00000000-0000-4000-8000-000000000052'
export const stackId = '00000000-0000-4000-8000-000000000053'

/** A database with nothing but the schema, for the tests of one file. */
export function emptyBook(): void {
  let database: TestDatabase
  beforeAll(async () => {
    database = await freshDatabase()
    process.env.DATABASE_URL = database.url
    process.env.BETTER_AUTH_SECRET = 'a secret of the tests, which is long enough'
  })
  afterAll(async () => {
    await closeDatabase()
    await database.drop()
  })
}

/** The shop, set up before the tests of one file. */
export function book(): void {
  emptyBook()
  beforeAll(async () => {
    await addFirstLead(ada.id ?? '', firstLead)
    for (const { id, name, role } of [ben, lam, vi]) {
      const short = name.slice(0, 3)
      await addPerson(ada, {
        id: id ?? '',
        name,
        role,
        initials: short,
        email: `${short}@shop.example`,
        password,
      })
    }
    await addMaterial(ada, {
      id: surfaceId,
      code: 'S200',
      name: '200 twill',
      role: 'surface',
      fibreArealWeightGsm: 200,
      fibreDensityGcm3: 1.78,
      fibreContent: { kind: 'fibre-volume', fibreVolumeFraction: 0.5 },
      rollWidthMm: 1250,
      thickestCureMm: null,
      cure: { name: 'first cure', segments: [{ rampCPerMin: 0.5, toC: 60, holdMin: 600 }], tgAfterC: 75 },
      postCure: {
        name: 'post-cure',
        segments: [{ rampCPerMin: 0.2, toC: 110, holdMin: 480 }],
        tgAfterC: 140,
      },
      lowBelowM2: 5,
      outLifeH: 240,
      sourceNote: 'invented',
      retired: false,
    })
    await addMaterial(ada, {
      id: bulkId,
      code: 'B650',
      name: '650 twill',
      role: 'bulk',
      fibreArealWeightGsm: 650,
      fibreDensityGcm3: 1.78,
      fibreContent: { kind: 'resin-mass', resinMassFraction: 0.38, resinDensityGcm3: 1.22 },
      rollWidthMm: 1250,
      thickestCureMm: null,
      cure: null,
      postCure: null,
      lowBelowM2: null,
      outLifeH: null,
      sourceNote: '',
      retired: false,
    })
    await addStack(ada, {
      id: stackId,
      code: 'M141',
      name: 'one, four, one',
      note: '',
      plies: [surfaceId, bulkId, bulkId, bulkId, bulkId, surfaceId].map((materialId, index) => ({
        materialId,
        directionDeg: index === 2 || index === 3 ? 45 : 0,
      })),
    })
  })
}

let made = 0

export function mouldInput(changes: Partial<MouldInput> = {}): MouldInput {
  made += 1
  return {
    id: randomUUID(),
    code: `M-${made}`,
    name: 'nose',
    partId: null,
    patternId: null,
    setId: null,
    pieceNo: null,
    stackId,
    hand: 'none',
    madeWhen: '',
    patternState: '',
    owner: '',
    massKg: null,
    lengthMm: null,
    widthMm: null,
    heightMm: null,
    liftingPoints: '',
    backing: '',
    heatInUseC: 120,
    heatFreeC: 150,
    heatBondedC: 140,
    tgDryC: 160,
    tgWetC: null,
    tgNote: '',
    partCureC: 80,
    canBeMadeAgain: true,
    demoulding: '',
    doNots: '',
    note: '',
    ...changes,
  }
}

export const pattern = (changes: Partial<PatternInput> = {}): PatternInput => ({
  id: randomUUID(),
  code: `PAT-${randomUUID().slice(0, 8)}`,
  name: 'pattern',
  madeOf: 'epoxy board',
  condition: '',
  place: '',
  owner: '',
  massKg: null,
  lengthMm: null,
  widthMm: null,
  heightMm: null,
  available: true,
  canBeMadeAgain: true,
  note: '',
  ...changes,
})

export const splitMould = (changes: Partial<MouldSetInput> = {}): MouldSetInput => ({
  id: randomUUID(),
  code: `SET-${randomUUID().slice(0, 8)}`,
  name: 'split',
  partId: null,
  massKg: null,
  lengthMm: null,
  widthMm: null,
  heightMm: null,
  liftingPoints: '',
  backing: '',
  assembly: '',
  note: '',
  hardware: [],
  ...changes,
})

export async function aMould(changes: Partial<MouldInput> = {}): Promise<MouldInput> {
  const input = mouldInput(changes)
  await addMould(ada, input)
  return input
}

export function areaInput(mouldId: string, changes: Partial<FaceAreaInput> = {}): FaceAreaInput {
  return {
    id: randomUUID(),
    mouldId,
    name: 'floor',
    originMm: [0, 0, 0],
    uAxis: [1, 0, 0],
    vAxis: [0, 1, 0],
    boundary: [
      [-600, -400],
      [600, -400],
      [600, 400],
      [-600, 400],
    ],
    lines: [],
    keepOuts: [],
    gridOriginMm: [-600, 400],
    gridCellMm: 50,
    stackId: null,
    ...changes,
  }
}

export async function anArea(mouldId: string, changes: Partial<FaceAreaInput> = {}): Promise<FaceAreaInput> {
  const input = areaInput(mouldId, changes)
  await addArea(ada, input)
  return input
}

const usual: { readonly [Kind in NewLogEntry['kind']]?: LogData[Kind] } = {
  cleared: { open: [], because: null, proof: false },
  pull: { went: 'usual', serial: null, partFate: 'good', mouldFate: 'unharmed', cureC: null },
  strip: { product: 'stripper' },
  clean: { product: 'cleaner' },
  seal: { product: 'sealer', lot: null, coats: 2 },
  coat: { product: 'release', lot: null, coats: 1, minutesBetween: null },
  'tape-test': { result: 'slips' },
  'leak-check': {
    bagging: 'mould alone',
    heat: 'cold',
    temperatureC: null,
    pins: 'out',
    volumeL: null,
    startMbar: 20,
    endMbar: 24,
    minutes: 10,
  },
  inspection: { verdict: 'sound', what: 'looked at all of it' },
  damage: { weight: 'stop', uMm: null, vMm: null, what: 'a crack' },
  moved: { place: 'rack B4' },
  state: { state: 'held', on: true, reason: 'to be looked at' },
  note: {},
  correction: {},
}

type Loose = Partial<Omit<NewLogEntry, 'kind' | 'data'>> & {
  readonly data?: Readonly<Record<string, unknown>>
}

/** An entry of the usual kind of its kind, on a day long past unless told. */
export function entry(mouldId: string, kind: NewLogEntry['kind'], changes: Loose = {}): NewLogEntry {
  const { data, ...head } = changes
  return {
    id: randomUUID(),
    mouldId,
    areaId: null,
    patchId: null,
    doneOn: '2024-05-10',
    doneAt: null,
    precision: head.doneAt ? 'minute' : 'day',
    correctsId: null,
    note: '',
    sawVersion: null,
    ...head,
    kind,
    data: { ...usual[kind], ...data },
  } as NewLogEntry
}

/** Writes entries one after the other as the lead and answers their ids. */
export async function write(
  mouldId: string,
  entries: readonly NewLogEntry[],
  actor: Actor = ada,
): Promise<string[]> {
  const ids: string[] = []
  for (const each of entries) ids.push((await writeEntry(actor, { ...each, mouldId })).id)
  return ids
}

/** Shorthand for one usual entry. */
export async function log(mouldId: string, kind: NewLogEntry['kind'], changes: Loose = {}): Promise<string> {
  const moving = kind === 'moved' || kind === 'state'
  const sawVersion =
    moving && changes.sawVersion === undefined ? await versionOf(mouldId) : (changes.sawVersion ?? null)
  return (await writeEntry(ada, entry(mouldId, kind, { ...changes, sawVersion }))).id
}

export async function versionOf(mouldId: string): Promise<number> {
  const [row] = await db().sql`select version from mould where id = ${mouldId}`
  return row?.version as number
}

export async function countsOf(mouldId: string) {
  const counts = (await mouldCounts([mouldId], null)).get(mouldId)
  if (!counts) throw new Error('no such mould')
  return counts
}

export async function releaseOf(mouldId: string, name: string) {
  const release = (await countsOf(mouldId)).release.find((target) => target.name.startsWith(name))
  if (!release) throw new Error(`no release count of ${name}`)
  return release
}

export async function today(): Promise<string> {
  return (await shopContext()).today
}

/** The refusal that a promise ends in. */
export async function refusal(work: Promise<unknown>): Promise<Refusal> {
  try {
    await work
  } catch (error) {
    if (error instanceof Refusal) return error
    throw error
  }
  throw new Error('nothing was refused')
}

/** How many entries a mould has in the table itself, corrected ones included. */
export async function logEntryCount(mouldId: string): Promise<number> {
  const [row] = await db().sql`select count(*)::int as rows from log_entry where mould_id = ${mouldId}`
  return row?.rows as number
}

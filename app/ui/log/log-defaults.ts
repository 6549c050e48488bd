import { daysAfter, type IsoDate, shopTime } from '#lib/core/dates'
import { type LogEntry, type LogKind, type MouldCounts, measuredText } from '#lib/core/log/index'
import { textOf } from '#lib/schema/form'
import { logData } from '#lib/schema/log'

/** Days that a matter is carried on when nothing else is said: common practice, no source. */
const carryDays = 14

/** What a form starts from. */
export interface Start {
  readonly kind: LogKind
  readonly today: IsoDate
  readonly timeZone: string
  /** The entry that is put right. */
  readonly corrected: LogEntry | null
  readonly asked: Readonly<Record<string, string | string[] | undefined>>
  /** Of a mould; null of a pattern. */
  readonly counts: MouldCounts | null
  readonly partCureC: number | null
  readonly lastProduct: { readonly product: string; readonly lot: string | null } | null
  /** The day of the oldest entry; the book begins there. */
  readonly beginsOn: IsoDate | null
}

/** Text at the leaves, as the form starts: what was written, or the usual case, so that it takes two taps. */
export function startOf(start: Start): Record<string, unknown> {
  const { corrected, kind, today, timeZone } = start
  const same = corrected?.kind === kind ? corrected : null
  const points = same?.kind === 'measured' ? measuredText(same.data.points) : ''
  return {
    where: whereOf(start),
    correctsId: corrected?.id ?? '',
    doneOn: corrected?.doneOn ?? (kind === 'before-book' ? (start.beginsOn ?? today) : today),
    time: corrected?.doneAt ? shopTime(corrected.doneAt, timeZone) : '',
    known: knownOf(corrected, kind),
    note: same?.note ?? '',
    pointsText: points,
    wholeSet: corrected ? '' : 'on',
    data: same ? textOf(logData[kind], same.data) : freshData(start),
    uses: (same?.uses ?? []).map((use) => ({ lotId: use.lotId, amount: String(use.amount) })),
  }
}

function knownOf(corrected: LogEntry | null, kind: LogKind): string {
  if (kind === 'before-book') return 'before'
  const precision = corrected?.precision ?? 'day'
  return precision === 'minute' ? 'day' : precision
}

function whereOf({ asked, corrected }: Start): string {
  const area = corrected ? corrected.areaId : asked.area
  const patch = corrected ? corrected.patchId : asked.patch
  return typeof patch === 'string' ? `patch:${patch}` : typeof area === 'string' ? `area:${area}` : ''
}

function freshData({ kind, counts, partCureC, lastProduct, asked, today }: Start): Record<string, string> {
  const told = (name: string) => {
    const value = asked[name]
    return typeof value === 'string' ? value.slice(0, 200) : ''
  }
  const leak = counts?.lastLeak
  const product = lastProduct?.product ?? ''
  const lot = lastProduct?.lot ?? ''
  const spot = { uMm: told('u'), vMm: told('v') }
  const carried = asked.outcome === 'carried'
  const starts: Partial<Record<LogKind, Record<string, string>>> = {
    pull: {
      went: 'usual',
      partFate: 'good',
      mouldFate: 'unharmed',
      serial: '',
      cureC: partCureC === null ? '' : String(partCureC),
    },
    strip: { product },
    clean: { product },
    seal: { product, lot, coats: '2' },
    coat: { product, lot, coats: '1', minutesBetween: '' },
    'tape-test': { result: 'slips' },
    'test-patch': { result: 'releases', surface: '', sealer: '', agent: product },
    'leak-check': {
      bagging: leak?.bagging ?? 'mould alone',
      heat: 'cold',
      pins: leak?.pins ?? 'out',
      temperatureC: '',
      volumeL: '',
      startMbar: '',
      endMbar: '',
      minutes: '10',
    },
    inspection: { verdict: 'sound', what: '' },
    damage: { weight: 'open matter', what: '', ...spot },
    repair: { method: 'fill', what: '', interim: '', untilPulls: '', untilOn: '', maxC: '', ...spot },
    'dowel-changed': { tag: told('tag'), what: 're-bushed', diameterMm: '', ...spot },
    're-machined': { what: '', depthMm: '', by: '' },
    heat: { what: 'cure', withPart: 'true', toC: '', holdMin: '' },
    pins: { tag: told('tag'), insertions: '1' },
    measured: { instrument: '', temperatureC: '', frame: typeof asked.area === 'string' ? 'area' : 'datum' },
    moved: { place: '' },
    state: { state: 'held', on: 'true', reason: '', untilOn: '' },
    cleared: { because: '', proof: '' },
    matter: { what: '', who: '', untilOn: '' },
    settled: {
      entryId: told('entry'),
      outcome: carried ? 'carried' : 'closed',
      untilOn: carried ? daysAfter(today, carryDays) : '',
      who: '',
      how: '',
    },
    'before-book': {
      pullsLow: '',
      pullsBest: '',
      pullsHigh: '',
      heatLow: '',
      heatBest: '',
      heatHigh: '',
      what: '',
    },
  }
  return starts[kind] ?? {}
}

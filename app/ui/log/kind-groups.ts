import { type LogKind, type PatternKind, patternKinds } from '#lib/core/log/index'

/** Kinds that a person writes by hand, as they are looked for; struck out is written from the history. */
export type WrittenKind = Exclude<LogKind, 'patch-laid' | 'proved' | 'correction'>

export interface KindGroup {
  readonly name: string
  readonly kinds: readonly WrittenKind[]
}

const groups: readonly KindGroup[] = [
  { name: 'Lay-up', kinds: ['cleared', 'pull', 'heat', 'pins'] },
  { name: 'Release', kinds: ['coat', 'tape-test', 'test-patch', 'clean', 'strip', 'seal'] },
  { name: 'Condition', kinds: ['leak-check', 'inspection', 'measured', 'damage'] },
  { name: 'Work on it', kinds: ['repair', 'dowel-changed', 're-machined'] },
  {
    name: 'Place, state, what is open',
    kinds: ['moved', 'state', 'matter', 'settled', 'before-book', 'note'],
  },
]

export function kindGroups(of: 'mould' | 'pattern'): readonly KindGroup[] {
  if (of === 'mould') return groups
  const taken = (kind: WrittenKind): kind is WrittenKind & PatternKind =>
    patternKinds.some((known) => known === kind)
  return groups
    .map(({ name, kinds }) => ({ name, kinds: kinds.filter(taken) }))
    .filter(({ kinds }) => kinds.length > 0)
}

/** What each kind is for, in one line. */
export const kindHints: Readonly<Record<WrittenKind, string>> = {
  cleared: 'the gate before a lay-up: what is open, and who cleared it',
  pull: 'one part demoulded: how it came out, its serial',
  heat: 'a cure or post-cure, with a part in it or standing free',
  pins: 'insertions of pins, which wear their bushes',
  coat: 'release coats, how many and of what',
  'tape-test': 'whether tape slips on it or grips',
  'test-patch': 'sealer and agent tried before the face is trusted to them',
  clean: 'cleaned, without taking the release off',
  strip: 'release taken off to the bare face',
  seal: 'sealer on a bare face',
  'leak-check': 'pressure at the start and at the end, cold or hot',
  inspection: 'looked at: sound, to be looked at, or not sound',
  measured: 'points measured, with instrument and temperature',
  damage: 'a mark, something to be seen to, or a stop',
  repair: 'a fill or a surface ply, for good or for the time being',
  'dowel-changed': 're-bushed, plugged, set new or removed',
  're-machined': 'cut again by a machine, how deep and by whom',
  moved: 'to another place, or lent',
  state: 'held, away, racked, retired ... with a reason',
  matter: 'something that somebody has to see to, until when',
  settled: 'an open matter closed or carried on',
  'before-book': 'pulls and heats from before it was written down, as a range',
  note: 'anything else worth knowing',
}

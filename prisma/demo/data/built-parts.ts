import type { BuiltPartInput, BuiltPartLot } from '#lib/schema/built-part'

/** What the shop has written about some of its parts; of most it knows only the pull. */
export type PartStory = Omit<BuiltPartInput, 'id' | 'partId'> & {
  readonly serial: string
  /** Lots of Stores that went into it, by product and lot. */
  readonly stock?: readonly { readonly material: string; readonly lot: string }[]
}

const named = (material: string, lot: string): BuiltPartLot => ({ lotId: null, material, lot })

/** Prepregs of parts are invented; they don't stand in Stores, which keeps tooling materials. */
const twill = (lot: string) => named('Part twill 240, invented', lot)
const unidirectional = (lot: string) => named('Part UD 150, invented', lot)
const film = (lot: string) => named('Film adhesive 150 g/m2, invented', lot)
const core = (lot: string) => named('Aramid honeycomb 12 mm, invented', lot)

/** What the inserts are bonded with. */
const adhesive = [{ material: 'Bush adhesive B', lot: 'B-019' }]

const hull = [twill('PT-2609'), unidirectional('PU-0412'), film('FA-118'), core('HC-77')]
const oven = '120 °C, 2 h at the part, vacuum only, oven 1'

export const partStories: readonly PartStory[] = [
  {
    serial: 'LH-27-02',
    stock: adhesive,
    cure: `${oven}; coldest 117, hottest 124 °C, logger file 0412`,
    whereNow: 'Bay 1, being trimmed',
    note: '',
    lots: hull,
  },
  {
    serial: 'LH-27-01',
    stock: adhesive,
    cure: `${oven}; coldest 116, hottest 123 °C, logger file 0398`,
    whereNow: 'On the car 2027',
    note: 'Weighed after trimming: 18.4 kg.',
    lots: [twill('PT-2604'), unidirectional('PU-0412'), film('FA-112'), core('HC-77')],
  },
  {
    serial: 'LH-26-11',
    cure: `${oven}; coldest 115, hottest 123 °C, logger file 0351`,
    whereNow: 'Spare, loft',
    note: '',
    lots: [twill('PT-2587'), unidirectional('PU-0391'), film('FA-101'), core('HC-71')],
  },
  {
    serial: 'LH-25-06',
    cure: oven,
    whereNow: 'Cut up for coupons',
    note: 'The stuck one. Its side is a hand sample: bare spot of 60 x 40 mm aft.',
    lots: [],
  },
  {
    serial: 'UD-27-03',
    cure: `${oven}, logger file 0409`,
    whereNow: 'Bay 2, cells being bonded',
    note: '',
    lots: [twill('PT-2609'), film('FA-118')],
  },
  {
    serial: 'UD-27-02',
    cure: oven,
    whereNow: 'Spare, loft',
    note: '',
    lots: [twill('PT-2604'), film('FA-112')],
  },
  {
    serial: 'ST-27-02',
    cure: 'Two cures: inner skin 120 °C, 90 min; core and outer skin 110 °C, 2 h; logger files 0405, 0407',
    whereNow: 'On the car 2027',
    note: '',
    lots: [twill('PT-2609'), film('FA-118'), core('HC-79')],
  },
  {
    serial: 'ST-26-10',
    cure: 'Two cures, logger files 0349, 0350',
    whereNow: 'Reworked; training seat',
    note: 'Came out harder: dry edge at the left thigh, filled.',
    lots: [twill('PT-2587'), film('FA-101'), core('HC-71')],
  },
  { serial: 'BT-27-02', cure: oven, whereNow: 'On the car 2027', note: '', lots: [twill('PT-2604')] },
  {
    serial: 'CR-27-02',
    stock: adhesive,
    cure: oven,
    whereNow: 'Bay 1, being drilled',
    note: '',
    lots: [twill('PT-2609')],
  },
]

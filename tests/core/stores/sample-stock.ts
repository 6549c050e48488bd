import type { LotFacts } from '#lib/core/stores/index'
import type { StockSubject } from '#lib/core/stores/matters'

export const today = '2026-11-25'

/** A roll that is fit in every way unless told. */
export function roll(changes: Partial<LotFacts> = {}): LotFacts & { readonly id: string } {
  return {
    id: `lot-${changes.lot ?? 'R-1'}`,
    lot: 'R-1',
    unit: 'm2',
    quantity: 40,
    remaining: 30,
    receivedOn: '2026-06-01',
    expiresOn: '2027-06-01',
    openedOn: null,
    closedOn: null,
    closedWhy: null,
    outHours: 10,
    outLifeH: 240,
    shelfLifeDays: null,
    openLifeDays: null,
    lowBelow: 10,
    ...changes,
  }
}

/** A tin of agent: no out life, an open life of 180 days. */
export function tin(changes: Partial<LotFacts> = {}): LotFacts & { readonly id: string } {
  return roll({
    lot: 'A-1',
    unit: 'l',
    quantity: 5,
    remaining: 3,
    expiresOn: null,
    outHours: 0,
    outLifeH: null,
    shelfLifeDays: 730,
    openLifeDays: 180,
    lowBelow: 1,
    ...changes,
  })
}

export function subject(changes: Partial<StockSubject> = {}): StockSubject {
  return {
    kind: 'material',
    id: 's',
    name: 'S200 Surface twill',
    unit: 'm2',
    lowBelow: 10,
    retired: false,
    lots: [roll()],
    ...changes,
  }
}

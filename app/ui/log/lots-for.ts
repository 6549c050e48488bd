import type { LogEntry, LogKind } from '#lib/core/log/index'
import { type LotOption, lotOption } from '#lib/core/stores/index'
import type { Actor } from '#lib/schema/actor'
import { openLots } from '#lib/services/stores-lots'

/** What an act takes from the stores: uses of product cards and roles of materials. Other acts take nothing. */
const usesOf: Partial<Record<LogKind, readonly string[]>> = {
  strip: ['stripper', 'cleaner', 'consumable'],
  clean: ['cleaner', 'consumable'],
  seal: ['sealer'],
  coat: ['release'],
  'test-patch': ['sealer', 'release', 'resin'],
  repair: ['filler', 'resin', 'adhesive', 'surface', 'bulk'],
  'dowel-changed': ['adhesive', 'filler'],
}

/** Lots that an entry of a kind may take from, fit ones first; those that the entry to be put right took among them. */
export async function lotsFor(
  actor: Actor,
  kind: LogKind,
  corrected: LogEntry | null,
): Promise<readonly LotOption[]> {
  const uses = usesOf[kind]
  if (!uses) return []
  const lots = (await openLots(actor, { of: null, uses: [...uses] })).map(lotOption)
  const gone = (corrected?.uses ?? []).filter((use) => !lots.some((lot) => lot.value === use.lotId))
  return [
    ...lots.filter((lot) => lot.usable),
    ...lots.filter((lot) => !lot.usable),
    ...gone.map(
      (use): LotOption => ({
        value: use.lotId,
        label: `${use.name}, lot ${use.lot}: closed`,
        unit: use.unit as LotOption['unit'],
        subject: use.name,
        usable: false,
      }),
    ),
  ]
}

import 'server-only'
import type { Row } from 'postgres'
import type {
  HeatCount,
  Hottest,
  LogData,
  MouldCounts,
  OpenMatter,
  ReleaseCount,
  RepairCount,
} from '#lib/core/log/index'

/** Ranges summed over what was written of them; nothing written stays unknown, never zero. */
export function guessesOf(row: Row | undefined): Pick<MouldCounts, 'beforeBook' | 'heatBeforeBook'> {
  return {
    beforeBook: row ? { low: row.low, best: row.best, high: row.high } : null,
    heatBeforeBook:
      row && row.heat_best !== null ? { low: row.heat_low, best: row.heat_best, high: row.heat_high } : null,
  }
}

export function toHeat(cycles: readonly Row[], hottest: readonly Row[]): HeatCount {
  const found = (withPart: boolean): Hottest | null => {
    const row = hottest.find((each) => each.with_part === withPart)
    return row ? { toC: row.to_c, doneOn: row.done_on } : null
  }
  return {
    cycles: cycles.map((row) => ({ toC: row.to_c as number, count: row.times as number })),
    hottestC: cycles[0]?.to_c ?? null,
    hottestWithPart: found(true),
    hottestFree: found(false),
  }
}

export function toRepair(row: Row): RepairCount {
  const data = row.data as LogData['repair']
  return {
    entryId: row.entry_id,
    areaId: row.area_id,
    areaName: row.area,
    doneOn: row.done_on,
    method: data.method,
    what: data.what,
    interim: data.interim,
    untilPulls: data.untilPulls,
    untilOn: data.untilOn,
    maxC: data.maxC,
    pullsSince: row.pulls_since,
    usualSince: row.usual_since,
    sealedSince: row.sealed_since,
    coatsSince: row.coats_since,
    tapeSlipsSince: row.tape_slips_since,
    closed: row.closed,
  }
}

export function toMatter(row: Row): OpenMatter {
  return {
    entryId: row.entry_id,
    kind: row.kind,
    what: row.what,
    who: row.who,
    untilOn: row.until_on,
    doneOn: row.done_on,
    byName: row.by_name,
    areaName: row.area,
    carried: row.carried,
  }
}

export function toRelease(row: Row): ReleaseCount {
  const target = row.target as ReleaseCount['target']
  const name =
    target === 'face'
      ? 'whole face'
      : target === 'area'
        ? (row.area_name as string)
        : `Patch ${row.patch_number}, ${row.patch_place}`
  return {
    target,
    areaId: row.area_id,
    patchId: row.patch_id,
    name,
    laidOn: row.laid_on,
    stripOn: row.strip_on,
    sealOn: row.seal_on,
    coatOn: row.coat_on,
    coatAt: row.coat_moment,
    tapeOn: row.tape_on,
    tapeResult: row.tape_result,
    sealedSinceStrip: row.sealed_since_strip,
    tapeSinceCoat: row.tape_since_coat,
    sealProduct: row.seal_product,
    sealLot: row.seal_lot,
    coatProduct: row.coat_product,
    coatLot: row.coat_lot,
    coatsSinceStrip: row.coats_since_strip,
    pulls: row.pulls,
    pullsSinceStrip: row.pulls_since_strip,
    pullsSinceSeal: row.pulls_since_seal,
    pullsSinceCoat: row.pulls_since_coat,
  }
}

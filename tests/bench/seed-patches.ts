import type postgres from 'postgres'
import type { Ply, PlyMaterial } from '#lib/core/laminate/types'
import { defaultRepairRules, openingRegion, type PatchPlan, planPatch } from '#lib/core/repair/index'
import { CALCULATION_VERSION, type Result } from '#lib/core/result'
import type { OpeningSource } from '#lib/schema/opening'

const surface: PlyMaterial = {
  name: 'Large twill 200',
  role: 'surface',
  fibreArealWeightGsm: 200,
  fibreDensityGcm3: 1.78,
  fibreContent: { kind: 'resin-mass', resinMassFraction: 0.42, resinDensityGcm3: 1.22 },
  rollWidthMm: 1250,
  thickestCureMm: null,
}
const bulk: PlyMaterial = { ...surface, name: 'Large twill 650', role: 'bulk', fibreArealWeightGsm: 650 }
const stack: readonly Ply[] = [0, 0, 45, 45, 0, 0].map((directionDeg, index) => ({
  material: index === 0 || index === 5 ? surface : bulk,
  directionDeg,
}))

/** Where the patches of the large shop lie: every patch is a copy of one of these really computed plans. */
const spots = [
  [-380, 260],
  [-120, 40],
  [90, -170],
  [330, 210],
] as const

interface SeedPlan {
  readonly opening: OpeningSource
  readonly input: object
  readonly result: Result<PatchPlan>
}

function planAt(shiftMm: readonly [number, number]): SeedPlan {
  const opening = {
    kind: 'circle',
    diameterMm: 50,
    placement: { shiftMm: [shiftMm[0], shiftMm[1]], turnDeg: 0, mirrored: false },
  } satisfies OpeningSource
  const input = {
    side: 'pattern-back',
    edge: 'scarf',
    opening: openingRegion(opening),
    stack,
    removedPlies: [1, 2, 3, 4, 5, 6],
    measuredThicknessMm: [3.1, 3.2, 3.3],
    taper: { ratio: 20, mmPerPly: 12.7, use: 'ratio' },
    coverPlies: [],
    area: {
      name: 'floor',
      boundary: [
        [-600, -400],
        [600, -400],
        [600, 400],
        [-600, 400],
      ],
      lines: [],
      keepOuts: [],
      dowels: [],
      oldPatches: [],
      grid: { originMm: [-600, 400], cellMm: 50 },
    },
    rules: defaultRepairRules,
    heat: { inUseC: 140, freeStandingC: 200, bondedC: 160 },
    cure: null,
    postCure: null,
    nextPartCureC: 120,
    patternAvailable: true,
  } as const
  const outcome = planPatch(input)
  if (!outcome.ok) throw new Error(`the seed's patch has no plan: ${outcome.reason}`)
  return { opening, input, result: outcome.result }
}

/** A patch on every fourth mould and a second one on every sixteenth, in every state that a plan has. */
export async function seedPatches(tx: postgres.TransactionSql): Promise<void> {
  const plans = spots.map(planAt)
  await tx`
    create temp table seed_patch on commit drop as
    select m.i, n, pg_temp.id_of('patch/' || m.i || '/' || n) as id, pg_temp.draw('state/' || m.i || '/' || n, 10) as fate,
      date '2023-02-01' + pg_temp.draw('laid/' || m.i || '/' || n, 1200) as laid_on, 1 + pg_temp.draw('spot/' || m.i || '/' || n, ${spots.length}) as spot
    from seed_mould m, generate_series(1, 2) n
    where m.i % (case n when 1 then 4 else 16 end) = 0`
  await tx`
    insert into patch (id, mould_id, area_id, number, title, reason, created_at)
    select id, pg_temp.id_of('mould/' || i), pg_temp.id_of('area/' || i || '/1'), n,
      pg_temp.pick('title/' || i || n, array['Opening round D02', 'Torn corner', 'Cracked surface ply', 'Moved dowel']),
      pg_temp.pick('reason/' || i || n, array['D02 moved for the new season', 'dropped on the trolley', 'leak that no sealer closed', 'part stuck and was levered']),
      laid_on - 12
    from seed_patch`
  await tx`
    create temp table seed_plan on commit drop as
    select spot, text::jsonb -> 'opening' as opening, text::jsonb -> 'input' as input, text::jsonb -> 'result' as result
    from unnest(${plans.map((plan) => JSON.stringify(plan))}::text[]) with ordinality as t (text, spot)`
  await tx`
    insert into patch_plan (id, patch_id, version_no, state, opening, input, result, calculation_version, created_by_id, created_by_name, created_at,
      signed_by_id, signed_by_name, signed_at, bench_at, laid_entry_id, proved_entry_id)
    select pg_temp.id_of('plan/' || s.i || '/' || s.n), s.id, 1,
      case when fate < 1 then 'sketched' when fate < 2 then 'signed' when fate < 3 then 'on the bench' when fate < 6 then 'laid' else 'proved' end,
      p.opening, p.input, p.result, ${CALCULATION_VERSION}, pg_temp.id_of('person/1'), 'Greta Solheim', laid_on - 12,
      case when fate >= 1 then pg_temp.id_of('person/2') end, case when fate >= 1 then 'Anton Maris' end, case when fate >= 1 then laid_on - 8 end,
      case when fate >= 2 then laid_on - 5 end, case when fate >= 3 then pg_temp.id_of('laid/' || s.i || '/' || s.n) end,
      case when fate >= 6 then pg_temp.id_of('proved/' || s.i || '/' || s.n) end
    from seed_patch s join seed_plan p using (spot)`
}

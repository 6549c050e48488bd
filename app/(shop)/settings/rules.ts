/** The shop's rules as the settings show them. */
export const rules: readonly {
  readonly name: string
  readonly label: string
  readonly hint?: string
  readonly tick?: boolean
}[] = [
  { name: 'rules.repair.edgeMarginMm', label: 'Margin to the edge of an area' },
  { name: 'rules.repair.patchSpacingMm', label: 'Between patches', hint: 'outline to outline' },
  { name: 'rules.repair.footprintToDowelRimMm', label: 'Footprint to the rim of a dowel' },
  { name: 'rules.repair.insideRadiusMm', label: "Least radius of an opening's corner" },
  { name: 'rules.repair.coverLapMm', label: 'Lap of a cover ply' },
  {
    name: 'rules.repair.leastSurfaceStepMm',
    label: 'Least step of the surface ply',
    hint: '0: no least step',
  },
  {
    name: 'rules.repair.thicknessTolerance',
    label: 'Built against measured thickness',
    hint: 'share of the measured one',
  },
  { name: 'rules.repair.plyAlignmentDeg', label: 'Direction of a ply may be off by' },
  {
    name: 'rules.repair.pliesPerDebulk',
    label: 'Debulk after every so many plies',
    hint: 'and after the first and the last',
  },
  { name: 'rules.repair.heatMarginC', label: 'Margin below a heat limit', hint: 'a difference in °C' },
  { name: 'rules.repair.cuttingAllowanceMm', label: 'Cutting allowance round a ply' },
  { name: 'rules.upkeep.coatsAfterStrip', label: 'Coats after a strip' },
  { name: 'rules.upkeep.sealNeeded', label: 'A bare face is sealed before it is coated', tick: true },
  { name: 'rules.upkeep.firstPulls', label: 'First pulls that want care' },
  { name: 'rules.upkeep.pullsPerTouchUp', label: 'Touch-up after so many pulls' },
  { name: 'rules.upkeep.pullsPerStrip', label: 'Strip after so many pulls' },
  { name: 'rules.upkeep.coatDryMin', label: 'A coat dries for' },
  { name: 'rules.upkeep.leakLimitMbar', label: 'Leak limit', hint: 'lost in the time below' },
  { name: 'rules.upkeep.leakLimitMin', label: 'Leak limit, over' },
  { name: 'rules.upkeep.leakEveryDays', label: 'A leak check is good for', hint: 'days' },
]

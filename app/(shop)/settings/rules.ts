/** One rule as the settings show it. */
export interface Rule {
  readonly name: string
  readonly label: string
  /** Unit in which a bare figure is read. */
  readonly unit?: string
  readonly hint?: string
  readonly tick?: boolean
}

/** The shop's rules as the settings show them. */
export const rules: readonly Rule[] = [
  { name: 'rules.repair.edgeMarginMm', label: 'Margin to the edge of an area', unit: 'mm' },
  { name: 'rules.repair.patchSpacingMm', label: 'Between patches', unit: 'mm', hint: 'outline to outline' },
  { name: 'rules.repair.footprintToDowelRimMm', label: 'Footprint to the rim of a dowel', unit: 'mm' },
  { name: 'rules.repair.insideRadiusMm', label: 'Least radius of a corner', unit: 'mm' },
  { name: 'rules.repair.coverLapMm', label: 'Lap of a cover ply', unit: 'mm' },
  {
    name: 'rules.repair.leastSurfaceStepMm',
    label: 'Least step of the surface ply',
    unit: 'mm',
    hint: '0: no least step',
  },
  {
    name: 'rules.repair.thicknessTolerance',
    label: 'Built against measured thickness',
    hint: 'of the measured one, as 0.1 or 10 %',
  },
  { name: 'rules.repair.plyAlignmentDeg', label: 'Direction of a ply may be off by', unit: '°' },
  {
    name: 'rules.repair.pliesPerDebulk',
    label: 'Debulk after every so many plies',
    hint: 'and after the first and the last',
  },
  { name: 'rules.repair.heatMarginC', label: 'Margin below a heat limit', unit: '°C' },
  { name: 'rules.repair.cuttingAllowanceMm', label: 'Cutting allowance round a ply', unit: 'mm' },
  { name: 'rules.upkeep.coatsAfterStrip', label: 'Coats after a strip' },
  { name: 'rules.upkeep.sealNeeded', label: 'A bare face is sealed before it is coated', tick: true },
  { name: 'rules.upkeep.firstPulls', label: 'First pulls that want care' },
  { name: 'rules.upkeep.pullsPerTouchUp', label: 'Touch-up after so many pulls' },
  { name: 'rules.upkeep.pullsPerStrip', label: 'Strip after so many pulls' },
  { name: 'rules.upkeep.coatDryMin', label: 'A coat dries for', unit: 'min' },
  {
    name: 'rules.upkeep.leakLimitMbar',
    label: 'Leak limit',
    unit: 'mbar',
    hint: 'lost in the time beside it',
  },
  { name: 'rules.upkeep.leakLimitMin', label: 'Leak limit, over', unit: 'min' },
  { name: 'rules.upkeep.leakEveryDays', label: 'A leak check is good for', unit: 'days' },
]

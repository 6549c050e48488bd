import type { FaceModel } from './face-model'

/** The face in words, for a reader who can't see the drawing. */
export function describeFace(model: FaceModel): string {
  const moved = model.dowels.filter((dowel) => dowel.oldPlace !== null).map((dowel) => dowel.tag)
  const set = model.dowels.filter((dowel) => dowel.setOn !== null)
  return [
    `Face area to scale with its location grid, cells of ${model.grid.cellMm} mm.`,
    listed(
      'Locating points',
      model.dowels.map((dowel) => dowel.tag),
    ),
    listed('Moved', moved),
    listed(
      'Where the log set them, not where the table has them',
      set.map((dowel) => `${dowel.tag} on ${dowel.setOn}`),
    ),
    listed(
      'Patches',
      model.patches.map((patch) => patch.name),
    ),
    listed(
      'Planned openings',
      model.openings.map((opening) => opening.name),
    ),
    listed(
      'On the back',
      model.keepOuts.map((keepOut) => keepOut.name),
    ),
  ]
    .filter((line) => line !== '')
    .join(' ')
}

function listed(what: string, names: readonly string[]): string {
  return names.length === 0 ? '' : `${what}: ${names.join(', ')}.`
}

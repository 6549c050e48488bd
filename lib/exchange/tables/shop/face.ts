import { day, figure, moment, shopTable, text, yesNo } from './define'

export const areasTable = shopTable('face-areas', {
  title: 'Face areas',
  about:
    "One row per area of a mould's face: its frame in the mould's axes, its grid, its stack, what was measured.",
  narrowedBy: ['mould'],
  columns: [
    text('mould', 'Mould'),
    text('area', 'Area'),
    figure('originXMm', 'Origin x (mm)', 2),
    figure('originYMm', 'Origin y (mm)', 2),
    figure('originZMm', 'Origin z (mm)', 2),
    figure('uX', 'u axis x', 6),
    figure('uY', 'u axis y', 6),
    figure('uZ', 'u axis z', 6),
    figure('vX', 'v axis x', 6),
    figure('vY', 'v axis y', 6),
    figure('vZ', 'v axis z', 6),
    figure('gridUMm', 'Grid origin u (mm)', 1),
    figure('gridVMm', 'Grid origin v (mm)', 1),
    figure('gridCellMm', 'Grid cell (mm)', 0),
    text('stack', 'Stack'),
    figure('corners', 'Points of the boundary'),
    figure('lines', 'Trim and scribe lines'),
    figure('keepOuts', 'Grounds to keep off'),
    figure('readings', 'Thickness readings'),
    figure('meanThicknessMm', 'Mean thickness (mm)', 2),
    text('id', 'Id'),
  ],
})

export const outlinesTable = shopTable('face-outlines', {
  title: 'Face outlines',
  about:
    "One row per point of an area's boundary, its lines, and the grounds to keep off, in the area's u and v.",
  narrowedBy: ['mould'],
  columns: [
    text('mould', 'Mould'),
    text('area', 'Area'),
    text('kind', 'Kind'),
    text('name', 'Name'),
    figure('no', 'Point'),
    figure('uMm', 'u (mm)', 3),
    figure('vMm', 'v (mm)', 3),
  ],
})

export const readingsTable = shopTable('thickness-readings', {
  title: 'Thickness readings',
  about: 'One row per place where the thickness of a mould was measured.',
  narrowedBy: ['mould'],
  columns: [
    text('mould', 'Mould'),
    text('area', 'Area'),
    figure('uMm', 'u (mm)', 1),
    figure('vMm', 'v (mm)', 1),
    figure('thicknessMm', 'Thickness (mm)', 2),
    day('measuredOn', 'Measured on'),
    text('byName', 'By'),
    yesNo('counts', 'Counts'),
    moment('struckAt', 'Struck out'),
    text('struckByName', 'Struck out by'),
    text('struckBecause', 'Because'),
    text('id', 'Id'),
  ],
})

export const pointsTable = shopTable('locating-points', {
  title: 'Locating points',
  about: 'One row per point of a numbered issue; the newest issue of a mould is in force, earlier ones stay.',
  narrowedBy: ['mould', 'issue'],
  columns: [
    figure('issue', 'Issue'),
    text('issueName', 'Issue name'),
    day('issuedOn', 'Issued on'),
    yesNo('inForce', 'In force'),
    text('mould', 'Mould'),
    text('area', 'Area'),
    text('tag', 'Tag'),
    text('kind', 'Kind'),
    figure('uMm', 'u (mm)', 3),
    figure('vMm', 'v (mm)', 3),
    figure('diameterMm', 'Diameter (mm)', 3),
    figure('bushDiameterMm', 'Bush diameter (mm)', 3),
    yesNo('through', 'Through'),
    yesNo('isDatum', 'Datum'),
    figure('toleranceMm', 'Position zone (mm)', 3),
    yesNo('notYetFixed', 'Not yet fixed'),
    text('byName', 'Issued by'),
    text('id', 'Id'),
  ],
})

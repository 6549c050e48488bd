import { day, figure, moment, shopTable, text, yesNo } from './define'

export const partsTable = shopTable('parts', {
  title: 'Parts',
  about: 'One row per part that the shop builds, with its moulds and how many were built.',
  columns: [
    text('code', 'Code'),
    text('name', 'Name'),
    figure('moulds', 'Moulds'),
    figure('built', 'Built'),
    text('note', 'Note'),
    text('id', 'Id'),
  ],
})

export const patternsTable = shopTable('patterns', {
  title: 'Patterns',
  about: 'One row per pattern: its condition, where it is, which moulds came off it.',
  columns: [
    text('code', 'Code'),
    text('name', 'Name'),
    text('madeOf', 'Made of'),
    text('condition', 'Condition'),
    text('place', 'Place'),
    yesNo('available', 'Moulds can be taken off it now'),
    yesNo('canBeMadeAgain', 'Can be made again'),
    text('moulds', 'Moulds off it'),
    text('owner', 'Owner'),
    figure('massKg', 'Mass (kg)', 1),
    figure('lengthMm', 'Length (mm)', 0),
    figure('widthMm', 'Width (mm)', 0),
    figure('heightMm', 'Height (mm)', 0),
    text('note', 'Note'),
    text('id', 'Id'),
  ],
})

export const setsTable = shopTable('split-moulds', {
  title: 'Split moulds',
  about: 'One row per split mould: its pieces, mass and size closed, how it goes together.',
  columns: [
    text('code', 'Code'),
    text('name', 'Name'),
    text('part', 'Part'),
    text('pieces', 'Pieces'),
    figure('massKg', 'Mass (kg)', 1),
    figure('lengthMm', 'Length (mm)', 0),
    figure('widthMm', 'Width (mm)', 0),
    figure('heightMm', 'Height (mm)', 0),
    text('liftingPoints', 'Lifting points'),
    text('backing', 'Backing'),
    text('assembly', 'Closing and opening'),
    text('note', 'Note'),
    text('id', 'Id'),
  ],
})

export const hardwareTable = shopTable('hardware', {
  title: 'Hardware of split moulds',
  about: 'One row per line of a hardware list: flanges, pins, bolts, loose blocks, seals.',
  columns: [
    text('set', 'Split mould'),
    figure('no', 'Line'),
    text('kind', 'Kind'),
    text('name', 'Name'),
    figure('count', 'Pieces'),
    text('size', 'Size'),
    text('joins', 'Between'),
    text('place', 'Kept at'),
    text('note', 'Note'),
  ],
})

export const builtPartsTable = shopTable('built-parts', {
  title: 'Built parts',
  about: 'One row per part that was built: from which moulds, when, how it was cured, where it is now.',
  columns: [
    text('serial', 'Serial'),
    text('part', 'Part'),
    text('moulds', 'Pulled from'),
    day('pulledOn', 'Pulled on'),
    text('cure', 'Cure'),
    text('whereNow', 'Where now'),
    text('note', 'Note'),
    moment('createdAt', 'Written'),
    text('id', 'Id'),
  ],
})

export const builtPartLotsTable = shopTable('built-part-lots', {
  title: 'Lots in built parts',
  about: 'One row per lot that went into a built part.',
  columns: [
    text('serial', 'Serial'),
    figure('no', 'Line'),
    text('material', 'Material'),
    text('lot', 'Lot'),
    yesNo('inStores', 'Lot is in the stores'),
  ],
})

export const seasonsTable = shopTable('seasons', {
  title: 'Seasons',
  about: 'One row per season, with its first and last day.',
  columns: [text('name', 'Name'), day('startsOn', 'Starts'), day('endsOn', 'Ends')],
})

export const picturesTable = shopTable('pictures', {
  title: 'Photos and drawings',
  about: 'One row per photo or drawing: what it shows, when, with what. The picture itself is on its page.',
  narrowedBy: ['mould'],
  columns: [
    text('mould', 'Mould'),
    text('pattern', 'Pattern'),
    text('set', 'Split mould'),
    text('builtPart', 'Built part'),
    text('kind', 'Kind'),
    day('takenOn', 'Taken on'),
    text('view', 'View'),
    text('caption', 'Caption'),
    text('mimeType', 'Type'),
    figure('widthPx', 'Width (px)'),
    figure('heightPx', 'Height (px)'),
    figure('sizeBytes', 'Size (bytes)'),
    text('byName', 'By'),
    moment('writtenAt', 'Written'),
    moment('putAwayAt', 'Put away'),
    text('putAwayBecause', 'Put away because'),
    text('entryId', 'Entry id'),
    text('id', 'Id'),
  ],
})

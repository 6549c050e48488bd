/** Invented names of the large shop. */

export const peopleNames = [
  'Greta Solheim',
  'Anton Maris',
  'Björn Thalgård',
  'Nadia Costeau',
  'Ilja Renn',
  'Freya Okonjo',
  'Matteo Ruvo',
  'Zoë Lachance',
  'Kenji Arato',
  'Pia Großmann',
  'Luís Navarra',
  'Hana Vrána',
  'Owen Tarrant',
  'Sibel Korkut',
  'Jonas Wierda',
  'Amara Dube',
  'Viktor Halász',
  'Elin Strand',
  'Tomasz Gruda',
  'Rosa Ibarren',
] as const

/** Codes and names of parts, told apart by number. */
export const families = [
  ['HU', 'Lower hull'],
  ['DK', 'Upper deck'],
  ['CR', 'Canopy ring'],
  ['WS', 'Wheel spat'],
  ['ST', 'Seat tub'],
  ['BT', 'Battery tray'],
  ['MP', 'Mirror pod'],
  ['NC', 'Nose cone'],
  ['FW', 'Front wing flap'],
  ['DF', 'Diffuser panel'],
  ['SP', 'Sidepod duct'],
  ['FA', 'Fairing'],
  ['KB', 'Keel box'],
  ['LS', 'Light shroud'],
  ['AD', 'Air duct'],
  ['HB', 'Hatch bezel'],
] as const

export const owners = ['', '', '', 'own', 'lent by the yacht club', 'customer: test department'] as const

export const products = [
  ['Gleitfilm 40', 'release'],
  ['Gleitfilm 55 hot', 'release'],
  ['Porenfüller P2', 'sealer'],
  ['Sealcoat B', 'sealer'],
  ['Wash N', 'cleaner'],
  ['Strip 9', 'stripper'],
  ['Filler EF', 'filler'],
  ['Bush bond 12', 'adhesive'],
] as const

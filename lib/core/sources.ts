/** Every published source that a calculation leans on, by the id that working lines carry. */
export interface Source {
  readonly title: string
  readonly where: string
  /** published: read there; common-practice: a rule of the trade without a document; memory: remembered. */
  readonly kind: 'published' | 'derived' | 'common-practice' | 'memory'
}

export const sources = {
  derived: {
    title: 'Derived from the stated formula',
    where: 'elementary geometry or arithmetic',
    kind: 'derived',
  },
  'common-practice': {
    title: 'Common practice',
    where: 'common practice, no source',
    kind: 'common-practice',
  },
  memory: {
    title: 'Remembered value',
    where: 'from memory; change it to what your data sheet says',
    kind: 'memory',
  },
  'shop-rule': { title: "The shop's own rule", where: 'Shop settings, editable', kind: 'common-practice' },
  'netcomposites-scarfing': {
    title: 'Repair guide: scarfing (half an inch a ply; 20 to 120 times the thickness)',
    where: 'netcomposites.com/guide/repair/scarfing',
    kind: 'published',
  },
  'netcomposites-patch': {
    title: 'Repair guide: the repair patch (ply-for-ply replacement)',
    where: 'netcomposites.com/guide-tools/guide/repair/the-repair-patch',
    kind: 'published',
  },
  'kaw-mechanics': {
    title: 'A. K. Kaw, Mechanics of Composite Materials, chapters 2 to 4',
    where: 'textbook',
    kind: 'published',
  },
  'astm-d3171': {
    title: 'Fibre volume from thickness and areal mass (ASTM D3171, method II form)',
    where: 'from memory of the standard; arithmetic of volumes',
    kind: 'memory',
  },
  'ac-43-13-1b': {
    title: 'FAA AC 43.13-1B, chapter 3, repair of laminates',
    where: 'advisory circular, 8 Sep 1998',
    kind: 'published',
  },
  'tm-1-1500-204-23-11': {
    title: 'US Army TM 1-1500-204-23-11, advanced composite repair practice',
    where: 'technical manual',
    kind: 'published',
  },
  'drop-test': {
    title: 'Vacuum drop test (under 1 inHg in 5 min)',
    where: 'compositesone.com/how-to-perform-a-resin-infusion-drop-test',
    kind: 'published',
  },
  'mil-hdbk-17': {
    title: 'MIL-HDBK-17-3F chapter 12, lessons learned on bonded joints; 17-2F, ply data',
    where: 'handbook',
    kind: 'published',
  },
  'light-aircraft-manual': {
    title:
      'Maintenance manual of a light aerobatic aircraft, chapter 51 (20 mm a layer and 50:1, the longer)',
    where: 'maintenance manual, structural repair',
    kind: 'published',
  },
  callister: {
    title: 'W. D. Callister, Materials Science and Engineering, chapter 16',
    where: 'textbook',
    kind: 'published',
  },
  'hartley-zisserman': {
    title: 'R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision, chapters 4 and 5',
    where: 'textbook',
    kind: 'published',
  },
  crawford: {
    title: 'R. J. Crawford, Plastics Engineering, chapter 3',
    where: 'textbook',
    kind: 'published',
  },
  'gere-mechanics': {
    title: 'J. M. Gere and S. P. Timoshenko, Mechanics of Materials (stresses on inclined planes)',
    where: 'textbook',
    kind: 'published',
  },
  'shigley-design': {
    title:
      'J. E. Shigley, Mechanical Engineering Design, section 9-9 (double lap with mismatch of expansion)',
    where: 'textbook',
    kind: 'published',
  },
  volkersen: {
    title: 'O. Volkersen, shear lag of a single lap',
    where: 'from memory of the textbook form',
    kind: 'memory',
  },
  'hart-smith': {
    title: 'L. J. Hart-Smith, NASA CR-112235, adhesive-bonded double-lap joints',
    where: 'from memory; derived anew from an energy integral',
    kind: 'memory',
  },
  'tooling-prepreg-practice': {
    title: 'Laying tooling prepreg: debulk after ply 1, about every third, and after the last',
    where: 'azom.com, article 10210',
    kind: 'published',
  },
  'prepreg-guide': {
    title: 'Processing guide for epoxy prepregs (95 % vacuum, 10 % loss in 5 min)',
    where: 'a supplier guide, studylib.net/doc/18538456',
    kind: 'published',
  },
} as const satisfies Record<string, Source>

export type SourceId = keyof typeof sources

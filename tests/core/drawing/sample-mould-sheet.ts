import type { Matter } from '#lib/core/log/index'
import type { MouldSheet } from '#lib/exchange/sheets/mould-sheet'
import { rectangle, sampleFace } from './sample-face'

function wall(areaName: string, width: number, height: number) {
  return sampleFace({
    areaName,
    boundary: rectangle(0, 0, width, height),
    grid: { originMm: [0, height], cellMm: 100 },
    lines: [],
    keepOuts: [],
    patches: [],
    openings: [],
    dowels: [
      { tag: 'D31', at: [width / 3, height / 2], diameterMm: 6, isDatum: false, oldPlace: null, setOn: null },
      {
        tag: 'D32',
        at: [width / 1.5, height / 2],
        diameterMm: 6,
        isDatum: false,
        oldPlace: [width / 1.5 - 6, height / 2 + 8],
        setOn: '2026-11-02',
      },
    ],
  })
}

function matter(text: string, word: string, cure: string, severity: Matter['severity']): Matter {
  return {
    code: text,
    severity,
    text,
    word,
    cure,
    place: null,
    settledBy: null,
    areaId: null,
    patchId: null,
    entryId: null,
  }
}

/** The sheet of an invented mould with three areas. */
export function sampleMouldSheet(changes: Partial<MouldSheet> = {}): MouldSheet {
  return {
    mould: { code: 'LH-P2', name: 'Lower hull, port', about: ['piece 1 of 3', 'off pattern LH-PAT'] },
    state: { word: 'proof pull only', reason: 'Patch 7, floor B5' },
    place: 'Rack 2, low',
    heat: { inUseC: 135, freeC: 180, tgDryC: 192 },
    stack: { plies: '10 plies', builtMm: 6, measuredMm: 5.9 },
    pulls: 58,
    pullsThisSeason: 3,
    issueNumber: 4,
    faces: [sampleFace(), wall('front wall', 1100, 420), wall('rear wall', 1100, 460)],
    seenFrom: 'cavity',
    strokes: {
      pulls: Array.from({ length: 58 }, (_, i) => ({
        day: `2026-${`${1 + Math.floor(i / 6)}`.padStart(2, '0')}-${`${1 + (i % 6) * 4}`.padStart(2, '0')}`,
        went: i % 17 === 9 ? 'forced' : i % 7 === 3 ? 'harder' : 'usual',
        cleared: true,
      })),
      coats: [{ afterPull: 0 }, { afterPull: 12 }, { afterPull: 30 }],
      patches: [{ fromPull: 31, toPull: null, label: 'Patch 7' }],
      seasons: [{ beforePull: 1, label: '2026' }],
    },
    matters: [
      matter(
        'Patch 7, floor B5: sealed, coated, tape test good; not yet proved',
        'proof pull',
        'Pull with care, then write it down as proved.',
        'look',
      ),
      matter('Leak check since Patch 7', 'missing', 'Check the mould alone, hot and cold.', 'stop'),
    ],
    printedAt: '2026-11-21T12:05:00Z',
    timeZone: 'Europe/Berlin',
    paper: 'a4',
    ...changes,
  }
}

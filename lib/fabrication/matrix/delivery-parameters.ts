import type { Design } from '@/lib/engine'
import { measureArray } from '@/lib/plan'
import { inBrief, lacksLayer } from './brief-figures'
import {
  type LocatedValue,
  listStated,
  type Measurement,
  numberParameter,
  round,
  type TradeParameter,
} from './parameter'

/** Longer and shorter side of the drawn array, frame and all. */
function measureArraySide({ brief, plan }: Design, side: 'longer' | 'shorter'): Measurement {
  if (brief.panelForm === 'single-parts') return { kind: 'absent', reason: 'parts are delivered singly' }
  const layout = plan === null ? null : measureArray(plan)
  if (layout === null) return { kind: 'unknown', reason: 'no array is drawn' }
  if (!layout.isWhole) return { kind: 'unknown', reason: 'the steps and the frame of the array are not all stated' }
  const sides = [layout.highMm[0] - layout.lowMm[0], layout.highMm[1] - layout.lowMm[1]]
  const value = side === 'longer' ? Math.max(...sides) : Math.min(...sides)
  const place = { kind: 'design', id: 'design', name: 'Array' } as const
  return { kind: 'values', values: [{ value: round(value), place, foilUm: null }] }
}

export const ARRAY_PARAMETERS: readonly TradeParameter[] = (
  [
    [
      'array-length-largest',
      'Array length, maximum',
      'How long may a delivered array be?',
      'longer',
      'shorten the array',
    ],
    [
      'array-width-largest',
      'Array width, maximum',
      'How wide may a delivered array be?',
      'shorter',
      'make the array narrower',
    ],
  ] as const
).map(([key, name, question, side, verb]) =>
  numberParameter({
    key,
    group: 'Tolerances and delivery',
    name,
    question,
    unit: 'mm',
    direction: 'larger-is-harder',
    verb,
    measuredAs: `${side} side of the drawn array, frame and all`,
    measure: ({ design }) => measureArraySide(design, side),
  }),
)

const MARKS = ['partNumber', 'lotOrDate', 'flameMark'] as const

/** Why a part has no printed legend; null where it has one or may have. */
function findNoLegend({ brief: { marking } }: Design): string | null {
  if (MARKS.every((mark) => marking[mark] !== null && marking[mark] !== 'on-part'))
    return 'nothing is marked on the part'
  return marking.method === null || marking.method === 'ink' ? null : 'the part is not marked in ink'
}

export const LEGEND_PARAMETERS: readonly TradeParameter[] = (
  [
    ['legend-line', 'lineWidthMm', 'Legend line width, minimum', 'How narrow may a line of the legend be?', 'widen'],
    [
      'legend-height',
      'letterHeightMm',
      'Legend character height, minimum',
      'How small may a character of the legend be?',
      'enlarge',
    ],
    [
      'legend-to-pad',
      'toPadMm',
      'Legend to pad, minimum',
      'How close may the legend come to a pad?',
      'move away from the pads',
    ],
  ] as const
).map(([key, field, name, question, verb]) =>
  numberParameter({
    key,
    group: 'Finish and class',
    name,
    question,
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb,
    measuredAs: 'marking of the brief, where it is in ink',
    measure: ({ design }) => {
      const absent = findNoLegend(design)
      return absent === null
        ? inBrief(design.brief.marking[field], 'the brief does not state it of the marking')
        : { kind: 'absent', reason: absent }
    },
  }),
)

export const FINISH_PARAMETERS: readonly TradeParameter[] = (
  [
    [
      'finish-top-metal',
      'topMetalUm',
      'Finish, metal on top, maximum',
      'How thick may the gold, silver, tin or solder of a finish be?',
      'the thickness of its metal on top',
    ],
    [
      'finish-nickel',
      'nickelUm',
      'Finish, nickel, maximum',
      'How thick may the nickel of a finish be?',
      'the thickness of its nickel',
    ],
  ] as const
).map(([key, field, name, question, what]) =>
  numberParameter({
    key,
    group: 'Finish and class',
    name,
    question,
    unit: 'um',
    direction: 'larger-is-harder',
    verb: 'ask for a thinner finish',
    measuredAs: `${what}, as the terms of the finish state it`,
    measure: ({ design }) =>
      inBrief(design.brief.finishTerms[field], `the finish does not state ${what}`, 'larger-is-harder'),
  }),
)

const hasFlatZone = ({ construction: { zones } }: Design) =>
  zones.some(({ kind }) => kind === 'rigid' || kind === 'stiffened')

export const FLATNESS_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'bow-and-twist',
    group: 'Tolerances and delivery',
    name: 'Bow and twist, minimum',
    question: 'To how little can bow and twist of a rigid or stiffened zone be held?',
    unit: 'pct',
    direction: 'smaller-is-harder',
    verb: 'allow more',
    measuredAs: 'bow and twist that the brief allows',
    measure: ({ design }) =>
      hasFlatZone(design)
        ? inBrief(design.brief.acceptance.bowAndTwistPct, 'the brief does not limit bow and twist')
        : { kind: 'absent', reason: 'the design has no rigid or stiffened zone' },
  }),
]

type Opening = Design['features']['coverlayOpenings'][number]

/**
 * Most squeeze-out, at each edge, at which an opening that lies off by `shiftMm` leaves open what it must; below 0 where it does not even
 * without squeeze-out. Null where the land itself is narrower than what must stay open: then no squeeze-out is at fault.
 *
 * Model    `openWidthMm` of the item on open land, solved for the squeeze-out: a land that reaches past both edges of the opening stays open over
 *          2 (o/2 - s), one that is shifted past by one edge over l/2 - t + o/2 - s
 * Source   exact geometry along one line
 */
export function allowedSqueezeOutMm(
  openingMm: number,
  landMm: number,
  neededOpenMm: number,
  shiftMm: number,
): number | null {
  if (neededOpenMm > landMm) return null
  return openingMm / 2 - Math.max(neededOpenMm / 2, neededOpenMm - landMm / 2 + shiftMm)
}

function readSqueezeOut({ id, name, openingMm, landMm, neededOpenMm }: Opening, shiftMm: number): LocatedValue | null {
  if (openingMm === null || landMm === null || neededOpenMm === null) return null
  const value = allowedSqueezeOutMm(openingMm, landMm, neededOpenMm, shiftMm)
  return value === null ? null : { value: round(value), place: { kind: 'coverlay-opening', id, name }, foilUm: null }
}

const findNoCoverlay = lacksLayer('coverlay-film', 'the construction has no coverlay film')

export const SQUEEZE_OUT_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'coverlay-squeeze-out',
    group: 'Coverlay',
    name: 'Coverlay adhesive squeeze-out, minimum',
    question: 'To how little can squeeze-out of coverlay adhesive over a pad be held?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'enlarge the opening',
    measuredAs:
      'squeeze-out at each edge of an opening that still leaves open what has to be, with the coverlay off by its tolerance',
    measure: ({ design }): Measurement => {
      const absent = findNoCoverlay(design)
      if (absent !== null) return { kind: 'absent', reason: absent }
      const shiftMm = design.brief.tolerances.coverlayMm
      if (shiftMm === null)
        return { kind: 'unknown', reason: 'the brief does not state a tolerance of the coverlay’s position' }
      return listStated(
        'smaller-is-harder',
        design.features.coverlayOpenings,
        (opening) => readSqueezeOut(opening, shiftMm),
        'the design lists no coverlay opening',
        'no opening states its size, its land and what must stay open',
      )
    },
  }),
]

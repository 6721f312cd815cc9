import type { Design, DielectricLayer } from '@/lib/engine'
import { listStated, type Measurement, numberParameter, type ParameterGroup, type TradeParameter } from './parameter'

interface Unstated {
  readonly key: string
  readonly group: ParameterGroup
  readonly name: string
  readonly question: string
  readonly unit?: 'mm' | 'um' | 'pct'
  readonly direction?: 'smaller-is-harder' | 'larger-is-harder'
  readonly verb?: string
  /** What the design would have to state. */
  readonly what: string
  /** Why there is no such thing in this design; null where there may be. */
  readonly findAbsence?: (design: Design) => string | null
}

/**
 * What fabricators state and no design holds as a number: a review sees the figure and that nothing stands against it, so nobody takes silence
 * for a fit.
 */
const unstated = ({
  what,
  findAbsence,
  unit = 'mm',
  direction = 'smaller-is-harder',
  verb = 'allow more',
  ...entry
}: Unstated): TradeParameter =>
  numberParameter({
    ...entry,
    unit,
    direction,
    verb,
    measuredAs: `not held in the design: ${what}`,
    measure: ({ design }): Measurement => {
      const absent = findAbsence?.(design) ?? null
      return absent === null
        ? { kind: 'unknown', reason: `the design does not hold ${what}` }
        : { kind: 'absent', reason: absent }
    },
  })

interface FromBrief extends Omit<Unstated, 'what' | 'unit' | 'direction' | 'verb'> {
  readonly field: keyof Design['brief']['tolerances']
  readonly what: string
}

/** Tolerances that the drawing gives, held against what the fabricator holds. */
const fromBrief = ({ field, what, findAbsence, ...entry }: FromBrief): TradeParameter =>
  numberParameter({
    ...entry,
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'allow more',
    measuredAs: `${what}, as the brief states it`,
    measure: ({ design }): Measurement => {
      const absent = findAbsence?.(design) ?? null
      if (absent !== null) return { kind: 'absent', reason: absent }
      return listStated(
        'smaller-is-harder',
        [design.brief.tolerances[field]],
        (value) => (value === null ? null : { value, place: BRIEF_PLACE, foilUm: null }),
        '',
        `the brief does not state ${what}`,
      )
    },
  })

const BRIEF_PLACE = { kind: 'brief', id: 'brief', name: 'Brief' } as const

const lacks =
  (kind: DielectricLayer['kind'], reason: string) =>
  ({ construction }: Design) =>
    construction.layers.some((layer) => layer.kind === kind) ? null : reason
const NO_MASK = lacks('solder-mask', 'the construction has no solder mask')
const NO_COVERLAY = lacks('coverlay-film', 'the construction has no coverlay film')
const NO_STIFFENER = lacks('stiffener', 'the construction has no stiffener')
const noHole = (plated: boolean, reason: string) => (design: Design) =>
  design.features.none.includes('holes') ||
  (design.features.holes.every((hole) => hole.plated === !plated) && design.features.holes.length > 0)
    ? reason
    : null
const noRigidZone = ({ construction }: Design) =>
  construction.zones.some(({ kind }) => kind === 'rigid') ? null : 'the design has no rigid zone'

export const TOLERANCE_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'zone-thickness-tolerance',
    group: 'Tolerances and delivery',
    name: 'Finished thickness tolerance (±), minimum',
    question: 'How closely can the finished thickness of a zone be held?',
    unit: 'um',
    direction: 'smaller-is-harder',
    verb: 'allow more',
    measuredAs: 'stated tolerance of the thickness of each zone',
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.construction.zones,
        ({ id, name, statedToleranceUm }) =>
          statedToleranceUm === null
            ? null
            : { value: statedToleranceUm, place: { kind: 'zone', id, name }, foilUm: null },
        'the design has no zone',
        'no zone states a tolerance of its thickness',
      ),
  }),
  fromBrief({
    key: 'outline-tolerance',
    field: 'outlineMm',
    group: 'Tolerances and delivery',
    name: 'Profile tolerance (±), minimum',
    question: 'How closely can the outline be cut?',
    what: 'a tolerance of the profile',
  }),
  unstated({
    key: 'hole-position-tolerance',
    group: 'Tolerances and delivery',
    name: 'Hole position tolerance (±), minimum',
    question: 'How closely can the position of a hole be held?',
    what: 'a tolerance of hole positions',
    findAbsence: ({ features }) => (features.none.includes('holes') ? 'the design has no hole' : null),
  }),
  fromBrief({
    key: 'drill-size-tolerance',
    field: 'holeMm',
    group: 'Tolerances and delivery',
    name: 'Finished hole size tolerance (±), minimum',
    question: 'How closely can the finished size of a hole be held?',
    what: 'a tolerance of hole sizes',
    findAbsence: ({ features }) => (features.none.includes('holes') ? 'the design has no hole' : null),
  }),
  fromBrief({
    key: 'coverlay-position-tolerance',
    field: 'coverlayMm',
    group: 'Coverlay',
    name: 'Coverlay registration (±), minimum',
    question: 'How closely can coverlay be laid?',
    what: 'a tolerance of the coverlay’s position',
    findAbsence: NO_COVERLAY,
  }),
  unstated({
    key: 'coverlay-squeeze-out',
    group: 'Coverlay',
    name: 'Coverlay adhesive squeeze-out, minimum',
    question: 'To how little can squeeze-out of coverlay adhesive over a pad be held?',
    what: 'the squeeze-out that its pads allow',
    findAbsence: NO_COVERLAY,
  }),
  fromBrief({
    key: 'stiffener-position-tolerance',
    field: 'stiffenerMm',
    group: 'Stiffeners',
    name: 'Stiffener position tolerance (±), minimum',
    question: 'How closely can a stiffener be placed?',
    what: 'a tolerance of the stiffeners’ position',
    findAbsence: NO_STIFFENER,
  }),
  unstated({
    key: 'inner-layer-clearance',
    group: 'Holes',
    name: 'Inner-layer clearance to hole, minimum',
    question: 'How close may copper of an inner layer come to a plated hole that it does not join?',
    what: 'the clearance of inner layers to holes',
    verb: 'widen the clearance',
    findAbsence: noHole(true, 'the design has no plated hole'),
  }),
  unstated({
    key: 'unplated-hole-clearance',
    group: 'Holes',
    name: 'Copper to non-plated hole, minimum',
    question: 'How close may copper come to a non-plated hole?',
    what: 'the clearance of copper to non-plated holes',
    verb: 'widen the clearance',
    findAbsence: noHole(false, 'the design has no non-plated hole'),
  }),
  unstated({
    key: 'laser-drill',
    group: 'Holes',
    name: 'Laser-drilled hole, minimum',
    question: 'How small may a hole be drilled by laser?',
    what: 'which holes are drilled by laser',
    verb: 'enlarge',
    findAbsence: noHole(true, 'the design has no plated hole'),
  }),
  unstated({
    key: 'mask-dam',
    group: 'Coverlay',
    name: 'Solder mask dam, minimum',
    question: 'How narrow may solder mask between two openings be?',
    what: 'the mask between openings',
    verb: 'widen',
    findAbsence: NO_MASK,
  }),
  unstated({
    key: 'mask-registration',
    group: 'Coverlay',
    name: 'Solder mask clearance round pads, minimum',
    question: 'How little may an opening in the solder mask be larger than its pad?',
    what: 'the openings of the solder mask',
    verb: 'enlarge the opening',
    findAbsence: NO_MASK,
  }),
  unstated({
    key: 'legend-line',
    group: 'Finish and class',
    name: 'Legend line width, minimum',
    question: 'How narrow may a line of the legend be?',
    what: 'the lines of a legend',
    verb: 'widen',
  }),
  unstated({
    key: 'legend-height',
    group: 'Finish and class',
    name: 'Legend character height, minimum',
    question: 'How small may a character of the legend be?',
    what: 'the characters of a legend',
    verb: 'enlarge',
  }),
  unstated({
    key: 'bow-and-twist',
    group: 'Tolerances and delivery',
    name: 'Bow and twist, minimum',
    question: 'To how little can bow and twist of a rigid zone be held?',
    unit: 'pct',
    what: 'a limit of bow and twist',
    findAbsence: noRigidZone,
  }),
  unstated({
    key: 'array-length-largest',
    group: 'Tolerances and delivery',
    name: 'Array length, maximum',
    question: 'How long may a delivered array be?',
    direction: 'larger-is-harder',
    verb: 'shorten the array',
    what: 'the size of an array',
  }),
  unstated({
    key: 'array-width-largest',
    group: 'Tolerances and delivery',
    name: 'Array width, maximum',
    question: 'How wide may a delivered array be?',
    direction: 'larger-is-harder',
    verb: 'make the array narrower',
    what: 'the size of an array',
  }),
]

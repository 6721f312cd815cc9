import type { Design } from '@/lib/engine'
import { inBrief, lacksLayer } from './brief-figures'
import { listStated, type Measurement, numberParameter, type ParameterGroup, type TradeParameter } from './parameter'

interface FromBrief {
  readonly key: string
  readonly field: keyof Design['brief']['tolerances']
  readonly group: ParameterGroup
  readonly name: string
  readonly question: string
  readonly what: string
  /** Why there is no such thing in this design; null where there may be. */
  readonly findAbsence?: (design: Design) => string | null
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
      return absent === null
        ? inBrief(design.brief.tolerances[field], `the brief does not state ${what}`)
        : { kind: 'absent', reason: absent }
    },
  })

const NO_COVERLAY = lacksLayer('coverlay-film', 'the construction has no coverlay film')
const NO_STIFFENER = lacksLayer('stiffener', 'the construction has no stiffener')
const noHole = ({ features }: Design) => (features.none.includes('holes') ? 'the design has no hole' : null)

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
  fromBrief({
    key: 'drill-size-tolerance',
    field: 'holeMm',
    group: 'Tolerances and delivery',
    name: 'Finished hole size tolerance (±), minimum',
    question: 'How closely can the finished size of a hole be held?',
    what: 'a tolerance of hole sizes',
    findAbsence: noHole,
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
  fromBrief({
    key: 'stiffener-position-tolerance',
    field: 'stiffenerMm',
    group: 'Stiffeners',
    name: 'Stiffener position tolerance (±), minimum',
    question: 'How closely can a stiffener be placed?',
    what: 'a tolerance of the stiffeners’ position',
    findAbsence: NO_STIFFENER,
  }),
  fromBrief({
    key: 'hole-to-edge-tolerance',
    field: 'holeToEdgeMm',
    group: 'Tolerances and delivery',
    name: 'Hole to edge tolerance (±), minimum',
    question: 'How closely can the distance from a hole to the edge of the part be held?',
    what: 'a tolerance from hole to edge',
    findAbsence: noHole,
  }),
  fromBrief({
    key: 'bend-position-tolerance',
    field: 'bendPositionMm',
    group: 'Bends',
    name: 'Bend position tolerance (±), minimum',
    question: 'How closely can a bend be formed at its place?',
    what: 'a tolerance of where bends lie',
    findAbsence: ({ bends, features }) =>
      bends.length === 0 && features.none.includes('bends') ? 'the design has no bend' : null,
  }),
]

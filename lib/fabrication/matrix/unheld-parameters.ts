import type { Design } from '@/lib/engine'
import { lacksLayer } from './brief-figures'
import { type Measurement, numberParameter, type ParameterGroup, type TradeParameter } from './parameter'

interface Unstated {
  readonly key: string
  readonly group: ParameterGroup
  readonly name: string
  readonly question: string
  readonly verb?: string
  /** What the design would have to state. */
  readonly what: string
  /** Why there is no such thing in this design; null where there may be. */
  readonly findAbsence: (design: Design) => string | null
}

/**
 * What fabricators state and no design holds as a number: a review sees the figure and that nothing stands against it, so nobody takes silence
 * for a fit.
 */
const unstated = ({ what, findAbsence, verb = 'allow more', ...entry }: Unstated): TradeParameter =>
  numberParameter({
    ...entry,
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb,
    measuredAs: `not held in the design: ${what}`,
    measure: ({ design }): Measurement => {
      const absent = findAbsence(design)
      return absent === null
        ? { kind: 'unknown', reason: `the design does not hold ${what}` }
        : { kind: 'absent', reason: absent }
    },
  })

const NO_MASK = lacksLayer('solder-mask', 'the construction has no solder mask')
const noHole = (plated: boolean, reason: string) => (design: Design) =>
  design.features.none.includes('holes') ||
  (design.features.holes.every((hole) => hole.plated === !plated) && design.features.holes.length > 0)
    ? reason
    : null

export const UNHELD_PARAMETERS: readonly TradeParameter[] = [
  unstated({
    key: 'hole-position-tolerance',
    group: 'Tolerances and delivery',
    name: 'Hole position tolerance (±), minimum',
    question: 'How closely can the position of a hole be held?',
    what: 'a tolerance of hole positions',
    findAbsence: ({ features }) => (features.none.includes('holes') ? 'the design has no hole' : null),
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
]

import { at, listStated, listValues, numberParameter, round, type TradeParameter } from './parameter'

export const STIFFENER_FEATURE_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'stiffener-overlap',
    group: 'Stiffeners',
    name: 'Stiffener overlap on coverlay, minimum',
    question: 'How little may a stiffener reach past the end of the coverlay?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'lengthen the overlap',
    measuredAs: 'overlap of each stiffener with the end of the coverlay',
    hint: [0.76, 0.5],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.stiffeners,
        (stiffener) => at('stiffener', stiffener, stiffener.coverlayOverlapMm),
        'the design lists no stiffener',
        'no stiffener states its overlap',
      ),
  }),
  numberParameter({
    key: 'stiffener-to-bend',
    group: 'Stiffeners',
    name: 'Stiffener to bend, minimum',
    question: 'How close may a stiffener end to a bend?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'move away from the bend',
    measuredAs: 'distance of each stiffener to its nearest bend',
    hint: [2, 1],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.stiffeners,
        (stiffener) => at('stiffener', stiffener, stiffener.nearestBend?.distanceMm ?? null),
        'the design lists no stiffener',
        'no stiffener states its distance to a bend',
      ),
  }),
]

export const BEND_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'bend-radius',
    group: 'Bends',
    name: 'Bend radius, minimum',
    question: 'To how small a radius is a part formed or guaranteed?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'enlarge the radius',
    measuredAs: 'inside radius of each bend',
    measure: ({ design }) =>
      listValues(
        'smaller-is-harder',
        design.bends.flatMap((bend) => at('bend', bend, bend.insideRadiusMm) ?? []),
        'the design has no bend',
      ),
  }),
  numberParameter({
    key: 'bend-radius-to-thickness',
    group: 'Bends',
    name: 'Bend ratio (radius to thickness), minimum',
    question: 'How small may a bend radius be for the thickness in it?',
    unit: 'ratio',
    direction: 'smaller-is-harder',
    verb: 'enlarge the radius or build thinner',
    measuredAs: 'inside radius over the nominal thickness of the zone of each bend',
    measure: ({ design, evaluation }) =>
      listStated(
        'smaller-is-harder',
        design.bends,
        (bend) => {
          const zone = evaluation.zones.find(({ zoneId }) => zoneId === bend.zoneId)
          const thicknessUm = zone?.thicknessUm ?? 0
          return thicknessUm > 0 ? at('bend', bend, round((bend.insideRadiusMm * 1000) / thicknessUm)) : null
        },
        'the design has no bend',
        'no bend lies in a zone with a thickness',
      ),
  }),
  numberParameter({
    key: 'bend-to-rigid',
    group: 'Bends',
    name: 'Bend to rigid or stiffened edge, minimum',
    question: 'How close may a bend begin to a rigid or stiffened edge?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'move away from the edge',
    measuredAs: 'distance of each bend to the nearest rigid or stiffened edge',
    hint: [3, 1.5],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.bends,
        (bend) => at('bend', bend, bend.distanceToRigidMm),
        'the design has no bend',
        'no bend states its distance to a rigid edge',
      ),
  }),
]

import {
  at,
  choiceParameter,
  listStated,
  listValues,
  makeChoices,
  numberParameter,
  round,
  type TradeParameter,
} from './parameter'

export const HOLE_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'plated-drill',
    group: 'Holes',
    name: 'Plated hole drill, minimum',
    question: 'How small may a plated hole be drilled?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'enlarge',
    measuredAs: 'drill of each plated hole',
    hint: [0.25, 0.15],
    measure: ({ design }) =>
      listValues(
        'smaller-is-harder',
        design.features.holes.flatMap((hole) => (hole.plated ? (at('hole', hole, hole.drillMm) ?? []) : [])),
        'the design lists no plated hole',
      ),
  }),
  numberParameter({
    key: 'unplated-drill',
    group: 'Holes',
    name: 'Non-plated hole drill, minimum',
    question: 'How small may an unplated hole be?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'enlarge',
    measuredAs: 'drill of each unplated hole',
    hint: [0.5, 0.3],
    measure: ({ design }) =>
      listValues(
        'smaller-is-harder',
        design.features.holes.flatMap((hole) => (hole.plated === false ? (at('hole', hole, hole.drillMm) ?? []) : [])),
        'the design lists no unplated hole',
      ),
  }),
  numberParameter({
    key: 'annular-ring',
    group: 'Holes',
    name: 'Annular ring, minimum',
    question: 'How narrow may the ring of copper round a plated hole be drawn?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'enlarge the ring',
    measuredAs: '(land - drill) / 2 of each plated hole, as drawn',
    hint: [0.2, 0.125],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.holes.filter(({ plated }) => plated === true),
        (hole) =>
          hole.landMm === null || hole.drillMm === null
            ? null
            : at('hole', hole, round((hole.landMm - hole.drillMm) / 2)),
        'the design lists no plated hole',
        'no plated hole states its land',
      ),
  }),
  numberParameter({
    key: 'hole-aspect-ratio',
    group: 'Holes',
    name: 'Aspect ratio, maximum',
    question: 'How deep may a plated hole be for its drill?',
    unit: 'ratio',
    direction: 'larger-is-harder',
    verb: 'drill larger or build thinner',
    measuredAs:
      'thickness of the thickest zone over the drill: holes do not state their zone, so this is the safe side',
    hint: [6, 8],
    measure: ({ design, evaluation }) => {
      const holes = design.features.holes.filter(({ plated }) => plated === true)
      const thicknessUm = Math.max(...evaluation.zones.map((zone) => zone.thicknessUm))
      if (!Number.isFinite(thicknessUm)) return { kind: 'unknown', reason: 'the design has no zone with a thickness' }
      const values = holes.flatMap(
        (hole) => (hole.drillMm === null ? null : at('hole', hole, round(thicknessUm / 1000 / hole.drillMm))) ?? [],
      )
      return listValues('larger-is-harder', values, 'the design lists no plated hole')
    },
  }),
  numberParameter({
    key: 'hole-to-bend',
    group: 'Holes',
    name: 'Hole to bend, minimum',
    question: 'How close may a hole lie to a bend?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'move away from the bend',
    measuredAs: 'distance of each hole to its nearest bend',
    hint: [2.5, 1.5],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.holes,
        (hole) => at('hole', hole, hole.nearestBend?.distanceMm ?? null),
        'the design lists no hole',
        'no hole states its distance to a bend',
      ),
  }),
  numberParameter({
    key: 'hole-to-transition',
    group: 'Holes',
    name: 'Hole to rigid-flex transition, minimum',
    question: 'How close may a hole lie to the transition from rigid to flex?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'move away from the transition',
    measuredAs: 'distance of each hole to the nearest rigid-to-flex transition',
    hint: [2, 1.25],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.holes,
        (hole) => at('hole', hole, hole.transitionDistanceMm),
        'the design lists no hole',
        'no hole states its distance to a transition',
      ),
  }),
]

export const OUTLINE_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'inside-corner-radius',
    group: 'Outline',
    name: 'Inside corner radius, minimum',
    question: 'How small may the radius of an inside corner be?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'enlarge the radius',
    measuredAs: 'radius of each inside corner of the outline',
    hint: [0.76, 0.5],
    measure: ({ design }) =>
      listValues(
        'smaller-is-harder',
        design.features.outlineCorners.flatMap((corner) => at('corner', corner, corner.insideRadiusMm) ?? []),
        'the design lists no inside corner',
      ),
  }),
  numberParameter({
    key: 'slit-width',
    group: 'Outline',
    name: 'Slit width, minimum',
    question: 'How narrow may a slit be?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'widen',
    measuredAs: 'width of each slit',
    hint: [0.5, 0.3],
    measure: ({ design }) =>
      listValues(
        'smaller-is-harder',
        design.features.slits.flatMap((slit) => at('slit', slit, slit.widthMm) ?? []),
        'the design lists no slit',
      ),
  }),
  numberParameter({
    key: 'slit-end-relief',
    group: 'Outline',
    name: 'Slit end relief diameter, minimum',
    question: 'How small may the hole at the end of a slit be?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'enlarge the relief',
    measuredAs: 'diameter of the relief at the end of each slit',
    hint: [1.5, 1],
    measure: ({ design }) =>
      listValues(
        'smaller-is-harder',
        design.features.slits.flatMap((slit) => at('slit', slit, slit.endReliefDiameterMm) ?? []),
        'the design lists no slit',
      ),
  }),
]

export const COVERLAY_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'coverlay-opening',
    group: 'Coverlay',
    name: 'Coverlay opening, minimum',
    question: 'How small may an opening in the coverlay be?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'enlarge',
    measuredAs: 'size of each coverlay opening',
    hint: [0.8, 0.5],
    measure: ({ design }) =>
      listValues(
        'smaller-is-harder',
        design.features.coverlayOpenings.flatMap((opening) => at('coverlay-opening', opening, opening.openingMm) ?? []),
        'the design lists no coverlay opening',
      ),
  }),
  numberParameter({
    key: 'coverlay-web',
    group: 'Coverlay',
    name: 'Coverlay web, minimum',
    question: 'How narrow may the coverlay between two openings be?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'widen the web',
    measuredAs: 'narrowest strip of coverlay beside each opening',
    hint: [0.5, 0.25],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.coverlayOpenings,
        (opening) => at('coverlay-opening', opening, opening.webMm),
        'the design lists no coverlay opening',
        'no coverlay opening states its web',
      ),
  }),
  choiceParameter({
    key: 'coverlay-opening-method',
    group: 'Coverlay',
    name: 'Coverlay opening method',
    question: 'By which methods are coverlay openings made?',
    choices: makeChoices({ drill: 'drilled', punch: 'punched', laser: 'cut by laser' }),
    measuredAs: 'method of each coverlay opening',
    measure: ({ design }) =>
      listStated(
        'one-of',
        design.features.coverlayOpenings,
        (opening) => at('coverlay-opening', opening, opening.method),
        'the design lists no coverlay opening',
        'no coverlay opening states how it is made',
      ),
  }),
  numberParameter({
    key: 'coverlay-registration',
    group: 'Coverlay',
    name: 'Coverlay overlap on pad, minimum',
    question: 'How little of a pad’s rim may the coverlay cover?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'let the coverlay reach further',
    measuredAs: 'coverlay capture of each pad: less than the registration leaves the rim bare',
    hint: [0.25, 0.15],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.pads,
        (pad) => at('pad', pad, pad.coverlayCaptureMm),
        'the design lists no pad',
        'no pad states its coverlay capture',
      ),
  }),
  numberParameter({
    key: 'coverlay-opening-to-bend',
    group: 'Coverlay',
    name: 'Coverlay opening to bend, minimum',
    question: 'How close may a coverlay opening lie to a bend?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'move away from the bend',
    measuredAs: 'distance of each coverlay opening to its nearest bend',
    hint: [2.5, 1.5],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.coverlayOpenings,
        (opening) => at('coverlay-opening', opening, opening.nearestBend?.distanceMm ?? null),
        'the design lists no coverlay opening',
        'no coverlay opening states its distance to a bend',
      ),
  }),
]

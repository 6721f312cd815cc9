import type { EvaluationContext } from '../../../context'
import type { MissingInput, Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide, notApplicable, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { sourceOf } from '../../drawn'
import { findGround } from '../../land-ground'

export const landHold = defineItem({
  id: 'land-hold',
  section: 'geometry',
  severity: 'major',
  question: 'Is each land on film without a plated hole held down, by its rim under the coverlay or by spurs?',
  titles: { meets: 'Lands without a hole are held down', fails: 'A land has neither hole, rim nor spur to hold it' },
  appliesTo: { needs: ['unsupported-pads'], says: 'lands without a plated hole' },
  limits: ['coverlayCaptureMm', 'padAnchorCount'],
  sourceKeys: [],
  restsOn: ['artwork', 'plan', 'features.pads', 'construction.zones', 'construction.layers'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'features.pads[].coverlayCaptureMm', worse: 'smaller' },
    { path: 'features.pads[].anchorCount', worse: 'smaller' },
  ],
  check: (context) =>
    context.design.features.pads.flatMap((pad, index) =>
      pad.hasPlatedHole === true ? [] : checkLand(context, pad, index),
    ),
})

function checkLand(
  context: EvaluationContext,
  pad: EvaluationContext['design']['features']['pads'][number],
  index: number,
): Outcome[] {
  const places = [placeOf('pad', pad)]
  const at = (field: keyof typeof pad, label: string): MissingInput => ({
    path: ['features', 'pads', index, field],
    label: `${label} ${pad.name}`,
  })
  const { coverlayCaptureMm: rimMm, anchorCount } = pad
  const rim =
    rimMm === null
      ? null
      : decide({
          value: rimMm,
          limit: context.getLimit('coverlayCaptureMm'),
          places,
          what: `coverlay over the rim of ${pad.name}`,
          equation: 'overlap as drawn',
          isTyped: true,
          remark: anchorCount === null ? undefined : `Spurs: ${anchorCount}.`,
        })
  const spurs =
    anchorCount === null
      ? null
      : decide({
          value: anchorCount,
          limit: context.getLimit('padAnchorCount'),
          places,
          what: `spurs of ${pad.name} under the coverlay`,
          ...sourceOf(context, ['features', 'pads', index, 'anchorCount'], 'count of spurs'),
        })
  // Either holds it, whatever it lies on.
  const held = [rim, spurs].filter((each) => each !== null && each.verdict === 'meets')
  if (held.length > 0) return held.flatMap((each) => each ?? [])
  const ground = findGround(context, pad)
  if (ground === 'board') return [notApplicable(`${pad.name} lies on a rigid board`, places)]
  if (pad.hasPlatedHole === null) {
    return [{ ...notComputedFrom([at('hasPlatedHole', 'whether there is a plated hole in')], places), rests: 'typed' }]
  }
  const missing = [
    ...(ground === null ? [at('zoneId', 'zone of')] : []),
    ...(rim === null ? [at('coverlayCaptureMm', 'coverlay over the rim of')] : []),
    ...(spurs === null ? [at('anchorCount', 'spurs of')] : []),
  ]
  return missing.length > 0 || rim === null || spurs === null
    ? [{ ...notComputedFrom(missing, places), rests: 'typed' }]
    : [rim, spurs]
}

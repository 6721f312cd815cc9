import type { EvaluationContext } from '../../../context'
import { BRIEF_FIELDS, type Brief, callByName, getFieldInText } from '../../../design'
import type { Outcome } from '../../../results'
import { BRIEF_PLACE, placeOf } from '../../checks'
import { decide, makeDesignLimit, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { isOpen } from '../../given'
import { SECTION_INPUTS } from '../../item-inputs'
import type { LimitKey } from '../../limits'
import { readListState } from '../../listed'

type ToleranceKey = keyof Brief['tolerances']

/** What each is held against: what shops hold in series. */
const LIMIT_OF = {
  outlineMm: 'outlineToleranceMm',
  holeMm: 'holeToleranceMm',
  holeToEdgeMm: 'holeToEdgeToleranceMm',
  stiffenerMm: 'stiffenerToleranceMm',
  coverlayMm: 'coverlayToleranceMm',
  bendPositionMm: 'bendPositionToleranceMm',
} as const satisfies Record<ToleranceKey, LimitKey>

export const tolerancesGiven = defineItem({
  id: 'tolerances-given',
  section: 'fabrication',
  severity: 'major',
  question:
    'Is there a number for every tolerance that the fabricator has to hold, can it be held, and do the datums suit film?',
  titles: { meets: 'Tolerances are given and can be held', fails: 'A tolerance is tighter than shops hold' },
  appliesTo: { needs: ['zones'], says: 'designs with a zone' },
  limits: Object.values(LIMIT_OF),
  sourceKeys: ['exactArithmetic', 'ownChoice'],
  restsOn: [
    'brief.toleranceScheme',
    'brief.tolerances.outlineMm',
    'brief.tolerances.holeMm',
    'brief.tolerances.holeToEdgeMm',
    'brief.tolerances.stiffenerMm',
    'brief.tolerances.coverlayMm',
    'brief.tolerances.bendPositionMm',
    ...SECTION_INPUTS,
    'features.holes',
    'features.none',
    'bends',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    ...(Object.keys(LIMIT_OF) as ToleranceKey[]).map((key) => ({
      path: `brief.tolerances.${key}`,
      worse: 'smaller' as const,
    })),
    { path: 'construction.zones[].statedToleranceUm', worse: 'smaller' },
  ],
  check: (context) => [
    ...(Object.keys(LIMIT_OF) as ToleranceKey[])
      .filter((key) => isAsked(key, context))
      .map((key) => checkTolerance(key, context)),
    ...checkThickness(context),
    ...checkNothing(context),
    ...checkDatums(context),
  ],
  judgment: { evidence: 'The drawing, with its datums and the condition in which it is measured.' },
})

/** Whether datums suit a part that is not rigid is for a person to say; that there are any is not. */
function checkDatums({ design: { brief } }: EvaluationContext): Outcome[] {
  return isOpen(brief.toleranceScheme)
    ? [notComputed(['brief', 'toleranceScheme'], 'datums and the condition of measuring', [BRIEF_PLACE], 'typed')]
    : []
}

function isAsked(key: ToleranceKey, context: EvaluationContext): boolean {
  const { layers } = context.design.construction
  switch (key) {
    case 'outlineMm':
      return true
    case 'holeMm':
    case 'holeToEdgeMm':
      return readListState('holes', context) !== 'none'
    case 'stiffenerMm':
      return layers.some(({ kind }) => kind === 'stiffener')
    case 'coverlayMm':
      return layers.some(({ kind }) => kind === 'coverlay-film')
    case 'bendPositionMm':
      return context.design.bends.length > 0
  }
}

function checkTolerance(key: ToleranceKey, context: EvaluationContext): Outcome {
  const value = context.design.brief.tolerances[key]
  const words = `tolerance of the ${getFieldInText(BRIEF_FIELDS.tolerances.fields[key]).replace(' ±', '')}`
  return value === null
    ? notComputed(['brief', 'tolerances', key], words, [BRIEF_PLACE], 'typed')
    : decide({
        value,
        limit: context.getLimit(LIMIT_OF[key]),
        places: [BRIEF_PLACE],
        what: words,
        equation: 'half the width of the tolerance, as typed',
        isTyped: true,
      })
}

/** Layers and radii that are said not to vary at all: every margin that rests on them would look wider than it is. */
function checkNothing({ design: { construction, bends } }: EvaluationContext): Outcome[] {
  const exact = [
    ...construction.layers.flatMap((layer) =>
      layer.kind !== 'unbonded-gap' && layer.tolerancePlusUm === 0 && layer.toleranceMinusUm === 0
        ? [{ name: layer.name, place: placeOf('layer', layer) }]
        : [],
    ),
    ...bends.flatMap((bend) =>
      bend.radiusToleranceMm === 0 ? [{ name: bend.name, place: placeOf('bend', bend) }] : [],
    ),
  ]
  if (exact.length === 0) return []
  return [
    decide({
      value: exact.length,
      limit: makeNoneAllowed('tolerancesOfNothingCount', 'ownChoice'),
      places: exact.map(({ place }) => place),
      what: 'layers and bends with a tolerance of 0',
      equation: 'tolerances as typed',
      isTyped: true,
      remark: `${exact.map(({ name }) => name).join(', ')}: nothing is made without a tolerance.`,
    }),
  ]
}

/** The layers of a zone add up to a spread: a tighter number on the drawing is a promise that nobody can keep. */
function checkThickness(context: EvaluationContext): Outcome[] {
  return context.design.construction.zones.map((zone, index) => {
    const places = [placeOf('zone', zone)]
    const result = context.findZoneResult(zone.id)
    if (zone.statedToleranceUm === null) {
      return notComputed(
        ['construction', 'zones', index, 'statedToleranceUm'],
        `tolerance of the thickness of ${zone.name}`,
        places,
        'typed',
      )
    }
    if (result === null || result.layers.length === 0) {
      return notComputed(
        ['construction', 'zones', index, 'presence'],
        `layers of ${callByName('zone', zone.name)}`,
        places,
      )
    }
    const { low, high } = result.worstCaseUm
    return decide({
      value: zone.statedToleranceUm,
      limit: makeDesignLimit({
        key: 'zoneThicknessToleranceUm',
        value: Math.max(result.thicknessUm - low, high - result.thicknessUm),
        unit: 'um',
        sense: 'at-least',
        sourceKey: 'exactArithmetic',
        name: 'worst case of the layers',
      }),
      places,
      what: `tolerance of the thickness of ${zone.name}`,
      equation: 'as typed, against the worst case of the layers',
      isTyped: true,
    })
  })
}

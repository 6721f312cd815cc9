import type { EvaluationContext } from '../../../context'
import { type Bend, callByName } from '../../../design'
import type { BendResult, ConductorStrainResult, LeafPull, Outcome, Place } from '../../../results'
import { inSentence } from '../../../units'
import { type BendUnderCheck, listBends, notComputedSection, placeOf } from '../../checks'
import { cannotTell, decide, makeDesignLimit, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { nameCopper, withinModel } from '../../model-reach'

export const leafPull = defineItem({
  id: 'leaf-pull',
  section: 'materials',
  severity: 'major',
  question: 'Does the copper bear the pull of leaves that are too short?',
  titles: { meets: 'No short leaf pulls its copper too far', fails: 'A short leaf pulls its copper too far' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'bends with unbonded leaves' },
  limits: [],
  sourceKeys: ['exactArithmetic', 'compositeBeam', 'plasticBending'],
  restsOn: [...SECTION_INPUTS, 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) =>
    listBends(context).flatMap((checked) => {
      const { bend, result, place } = checked
      const unknown = notComputedSection(checked)
      if (unknown !== null) return [unknown]
      if (result.leaves.length < 2) return [notApplicable(`${callByName('bend', bend.name)} has one leaf`, [place])]
      const open = findOpen(context, checked)
      if (open !== null) return [open]
      const { leafPull: pull } = result
      if (pull === null) {
        return [
          notComputed(['bends', checked.index], `lengths of the leaves of ${callByName('bend', bend.name)}`, [place]),
        ]
      }
      const copper = result.conductors.filter(({ leafIndex }) => leafIndex === pull.leafIndex)
      if (copper.length === 0)
        return [notApplicable(`the short leaf of ${callByName('bend', bend.name)} has no copper`, [place])]
      return copper.flatMap((conductor) => judge(bend, result, conductor, pull, place))
    }),
})

/** What is not stated, of this bend or of another one that the leaves pass on their way. */
function findOpen({ design }: EvaluationContext, { bend, index, place }: BendUnderCheck): Outcome | null {
  const zoneAt = design.construction.zones.findIndex(({ id }) => id === bend.zoneId)
  const passed = design.bends.flatMap((each, at) => (each.zoneId === bend.zoneId ? [{ each, at }] : []))
  for (const { each, at } of passed) {
    if (each.leafLengths === null) {
      return notComputed(
        ['bends', at, 'leafLengths'],
        `lengths of the leaves of ${callByName('bend', each.name)}`,
        [place],
        'typed',
      )
    }
    if (each.leafLengths === 'stepped' && each.leafStepMm === null) {
      return notComputed(
        ['bends', at, 'leafStepMm'],
        `step of the leaves of ${callByName('bend', each.name)}`,
        [place],
        'typed',
      )
    }
  }
  const roomy = passed.find(({ each }) => each.leafLengths === 'equal-free-to-buckle')
  if (roomy !== undefined) return judgeBuckling(bend, roomy.each, place)
  const zone = design.construction.zones[zoneAt]
  return zone === undefined || zone.lengthMm === null
    ? notComputed(
        ['construction', 'zones', zoneAt, 'lengthMm'],
        `length between the places where the leaves of bend ${design.bends[index]?.name ?? ''} are held`,
        [place],
      )
    : null
}

/** A leaf that gives way by buckling pulls at no other; how tight it buckles is another matter. */
function judgeBuckling({ name, use }: Bend, roomy: Bend, place: Place): Outcome {
  if (use === 'fold-once' || use === 'flex-to-install') {
    return {
      kind: 'said',
      verdict: 'meets',
      rests: 'typed',
      sourceKey: 'commonPractice',
      places: [place],
      summary: `The inner leaves of ${roomy.name} are stated to have room to buckle, so that no leaf is pulled.`,
    }
  }
  return cannotTell(
    `the leaves of ${callByName('bend', name)}`,
    {
      because: 'a leaf that buckles in motion pulls and lets go in a way that is not computed',
      decidedBy: 'step the leaves, or test them',
    },
    [place],
  )
}

function judge(
  bend: Bend,
  result: BendResult,
  conductor: ConductorStrainResult,
  pull: LeafPull,
  place: Place,
): Outcome[] {
  const places = [place, placeOf('layer', { id: conductor.layerId, name: conductor.name })]
  const what = `strain of ${nameCopper(conductor)} in the short leaf of ${callByName('bend', bend.name)}, pull and bending together`
  const { allowablePct, allowableRangePct, peakStrainPct, peakRangePct } = conductor
  if (bend.use === null) return [notComputed(['bends'], `use of ${callByName('bend', bend.name)}`, places)]
  if (allowablePct === null) {
    return [
      cannotTell(
        what,
        { because: 'no strain is known to be allowed for its foil', decidedBy: 'see the copper strain of the bend' },
        places,
      ),
    ]
  }
  const isBeyond = pull.strainPct === null
  const outcome = decide({
    value: peakStrainPct,
    ...(isBeyond ? { bound: 'more-than' as const } : {}),
    // The pull is in the strain of the copper already.
    range: peakRangePct,
    rangeOver: 'both',
    limit: makeDesignLimit({
      key: 'allowableStrainPct',
      value: allowablePct,
      unit: 'pct',
      sense: 'at-most',
      sourceKey: 'compositeBeam',
      name: 'allowable of its foil and use',
    }),
    limitRange: allowableRangePct ?? undefined,
    limitRangeOver: 'constants',
    places,
    what,
    equation: 'strain of bending + e, arc x e + (length - arc) x e_straight = what the leaf lacks',
    sourceKey: 'plasticBending',
    remark: describe(pull, conductor),
  })
  return [withinModel(result, outcome, () => null)]
}

function describe(
  { leafIndex, shortMm, heldLengthMm, strainPct, straightPct, highPct, forceN }: LeafPull,
  { yieldStrainPct }: ConductorStrainResult,
): string {
  const which = leafIndex === 0 ? 'innermost' : 'outermost'
  const lacks = `The ${which} leaf lacks ${inSentence(shortMm, 'mm')} over ${inSentence(heldLengthMm, 'mm')} between its ends`
  if (strainPct === null || straightPct === null || forceN === null) return `${lacks}.`
  const most = highPct === null ? '' : `, up to ${inSentence(highPct, 'pct')} where nothing else gives`
  const past = straightPct > yieldStrainPct ? '; its copper yields along its whole length' : ''
  return `${lacks}: the pull is ${inSentence(forceN, 'newton')} and stretches the bend by ${inSentence(strainPct, 'pct')}${most}${past}.`
}

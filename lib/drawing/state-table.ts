import { type BendResult, CANNOT_TELL, callByName } from '@/lib/engine'
import { asComputed, asEntered, digitsAsComputed } from '@/lib/engine/units'
import { formatDesignation, type LayerDesignation } from './layer-designations'
import type { PictureTable } from './picture'

const NO_DESIGNATIONS: ReadonlyMap<string, LayerDesignation> = new Map()

/**
 * What the strain of each conductor layer is made of; null where the bend is made from flat and nothing else loads it.
 *
 * @param designations  where the reader knows layers by them
 */
export function listStateRows(bend: BendResult, designations = NO_DESIGNATIONS): PictureTable | null {
  const { states } = bend
  if (states === null || bend.conductors.every((conductor) => conductor.states === null)) return null
  const hasPull = states.pullN > 0 || bend.conductors.some((conductor) => (conductor.states?.pullPct ?? 0) > 0)
  const hasTwist = states.twistDeg > 0
  const hasFold = states.foldedToRadiusMm !== null
  const hasCycle = bend.conductors.some(({ cycleRangePct }) => cycleRangePct !== null)
  const strain = (pct: number | null | undefined) => digitsAsComputed(pct, 'strainPct')
  const column = (key: string, label: string) => ({ key, label, numeric: true })
  return {
    caption: `Parts of the copper strain in ${callByName('bend', bend.name)}`,
    columns: [
      { key: 'layer', label: 'Layer', numeric: false },
      column('bending', 'Bending, %'),
      ...(hasPull ? [column('pull', 'Pull, %')] : []),
      ...(hasTwist ? [column('edge', 'Edge of the twist, %'), column('shear', 'Shear of the twist, %')] : []),
      column('total', 'Together, %'),
      ...(hasCycle ? [column('cycle', 'Range of a cycle, %'), column('mean', 'Mean of bending, %')] : []),
      column('allowed', 'Allowed, %'),
      ...(hasFold
        ? [
            column('fold', 'Fold before, %'),
            column('foldAllowed', 'Allowed in one fold, %'),
            ...(hasCycle ? [column('used', 'Life used by the fold, %')] : []),
          ]
        : []),
    ],
    rows: bend.conductors.map(({ layerId, name, peakStrainPct, cycleRangePct, allowablePct, states: parts }) => {
      const designation = designations.get(layerId)
      const fold = parts?.fold ?? null
      return {
        layer: designation === undefined ? name : `${formatDesignation(designation)} ${name}`,
        bending: strain(parts?.bendingPct),
        pull: strain(parts?.pullPct),
        edge: strain(parts?.twistEdgePct),
        shear: strain(parts?.twistShearPct),
        total: strain(peakStrainPct),
        cycle: strain(cycleRangePct),
        mean: strain(parts?.meanPct),
        allowed: strain(allowablePct),
        fold: strain(fold?.strainPct),
        foldAllowed: strain(fold?.allowablePct),
        used: digitsAsComputed(
          fold?.damageFraction == null ? null : Math.min(100, 100 * fold.damageFraction.nominal),
          'smallSharePct',
        ),
      }
    }),
  }
}

/** Figures of the whole bend that follow from its states, its loads and the faces that hold it. */
export function listStateFigures({
  states,
  freeFold,
  leafPull,
}: Pick<BendResult, 'states' | 'freeFold' | 'leafPull'>): [string, string][] {
  const figures: [string, string][] = []
  if (states !== null) {
    const { fromRadiusMm, equivalentRadiusMm, twistTorqueNmm } = states
    if (fromRadiusMm !== null) {
      figures.push(['Inside radius at the flatter end', asComputed(fromRadiusMm, 'minRadiusMm')])
    }
    if (equivalentRadiusMm !== null) {
      figures.push(['Radius from flat with the same strain range', asComputed(equivalentRadiusMm, 'minRadiusMm')])
    }
    if (twistTorqueNmm !== null) figures.push(['Torque of the twist, elastic', asComputed(twistTorqueNmm, 'momentNmm')])
  }
  if (freeFold !== null) {
    const gap = asEntered(freeFold.faceGapMm, 'mm')
    figures.push(
      [`Inside radius at the tip, faces ${gap} apart`, asComputed(freeFold.tipInsideRadiusMm, 'minRadiusMm')],
      ['Force on each of the faces', asComputed(freeFold.forceN, 'forceN')],
    )
  }
  if (leafPull !== null) {
    const { leafIndex, shortMm, heldLengthMm, strainPct, highPct, forceN, beyondPct } = leafPull
    const most = highPct === null ? `more than ${asEntered(beyondPct, 'pct')}` : asComputed(highPct, 'strainPct')
    figures.push(
      [
        `Lacking length of the ${leafIndex === 0 ? 'innermost' : 'outermost'} leaf, held over ${asEntered(heldLengthMm, 'mm')}`,
        asComputed(shortMm, 'developedLengthMm'),
      ],
      [
        'Stretch of that leaf in the bend',
        strainPct === null
          ? `${CANNOT_TELL}: more than ${asEntered(beyondPct, 'pct')}`
          : `${asComputed(strainPct, 'strainPct')}, up to ${most} where nothing else gives`,
      ],
    )
    if (forceN !== null) figures.push(['Pull in that leaf', asComputed(forceN, 'forceN')])
  }
  return figures
}

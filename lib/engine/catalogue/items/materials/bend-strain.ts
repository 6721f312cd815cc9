import type { EvaluationContext } from '../../../context'
import type { Bend } from '../../../design'
import type { ConductorStrainResult, Limit, Outcome } from '../../../results'
import { SOURCES, type SourceKey } from '../../../sources'
import { listBends, placeOf } from '../../checks'
import { decide, notApplicable, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { getSourceOwner } from '../../limits'

export const bendStrain = defineItem({
  id: 'bend-strain',
  section: 'materials',
  severity: 'blocking',
  question: 'Does the copper strain in each bend stay below what its foil and use allow?',
  titles: { meets: 'Copper strain is within the allowable', fails: 'Copper strain exceeds the allowable' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'designs with a bend and a conductor layer' },
  limits: [],
  sourceKeys: ['compositeBeam', 'fatigueDuctility', 'ipc2223'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  check: (context) =>
    listBends(context).map(({ bend, result, index, place }): Outcome => {
      if (result.conductors.length === 0) return notApplicable(`no conductor runs through bend ${bend.name}`, [place])
      if (bend.use === null) return notComputed(['bends', index, 'use'], `use of bend ${bend.name}`, [place])
      const worst = findMostStrained(result.conductors)
      if (worst === null || worst.allowablePct === null) {
        return result.missing.length > 0
          ? notComputedFrom(result.missing, [place])
          : notComputed(['bends', index, 'zoneId'], `allowable strain of the foil in bend ${bend.name}`, [place])
      }
      return decide({
        value: worst.peakStrainPct,
        range: worst.peakRangePct,
        limit: makeStrainLimit(context, bend, worst, worst.allowablePct),
        places: [place, placeOf('layer', { id: worst.layerId, name: worst.name })],
        what: `strain of ${worst.name} in bend ${bend.name}`,
        equation: 'e = (y - y_n) / (R + y_n)',
        sourceKey: 'compositeBeam',
        cautions: result.cautions,
      })
    }),
})

/** A layer without an allowable counts as worst: nobody can say that it holds. */
function findMostStrained(conductors: readonly ConductorStrainResult[]): ConductorStrainResult | null {
  let worst: ConductorStrainResult | null = null
  let worstShare = -1
  for (const conductor of conductors) {
    const share =
      conductor.allowablePct === null ? Number.POSITIVE_INFINITY : conductor.peakStrainPct / conductor.allowablePct
    if (share > worstShare) {
      worst = conductor
      worstShare = share
    }
  }
  return worst
}

/** The allowable comes from the fatigue relation in dynamic use, else from the foil's record. */
function makeStrainLimit(
  context: EvaluationContext,
  bend: Bend,
  conductor: ConductorStrainResult,
  allowablePct: number,
): Limit {
  const layer = context.layersById.get(conductor.layerId)
  const foil = layer?.kind === 'conductor' ? context.findMaterial(layer.materialId)?.foil : null
  const record = bend.use === 'fold-once' ? foil?.allowableFoldOncePct : foil?.allowableInstallPct
  const sourceKey = bend.use === 'dynamic' ? 'fatigueDuctility' : (record?.sourceKey ?? 'ipc2223')
  return {
    key: 'allowableStrainPct',
    value: allowablePct,
    unit: 'pct',
    sense: 'at-most',
    sourceKey,
    owner: isSourceKey(sourceKey) ? getSourceOwner(sourceKey) : { kind: 'design', name: 'material record' },
  }
}

function isSourceKey(key: string): key is SourceKey {
  return Object.hasOwn(SOURCES, key)
}

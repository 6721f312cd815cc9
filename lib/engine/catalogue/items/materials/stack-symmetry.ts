import type { Outcome, ZoneLayerResult, ZoneResult } from '../../../results'
import { placeOf } from '../../checks'
import { decide } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'

export const stackSymmetry = defineItem({
  id: 'stack-symmetry',
  section: 'materials',
  severity: 'major',
  question: 'Is each rigid zone built alike above and below its middle?',
  titles: { meets: 'Rigid zones are symmetric', fails: 'A rigid zone is not symmetric and may warp' },
  appliesTo: { needs: ['rigid-zones'], says: 'parts with a rigid zone' },
  limits: ['stackAsymmetryFraction'],
  sourceKeys: ['exactArithmetic'],
  restsOn: [...SECTION_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) =>
    context.zones
      .filter(({ kind }) => kind === 'rigid')
      .map((zone): Outcome => {
        const worst = findWorstAsymmetry(zone)
        return decide({
          value: worst.fraction,
          limit: context.getLimit('stackAsymmetryFraction'),
          places: [
            placeOf('zone', { id: zone.zoneId, name: zone.name }),
            ...worst.layers.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name })),
          ],
          what: `difference between mirrored layers of ${zone.name}`,
          equation: 'layers of one kind, first against last',
          remark: worst.remark,
        })
      }),
})

/** What shrinks and stiffens enough to warp a board: laminate, prepreg and copper. A mask does not. */
const PAIRED_KINDS = ['rigid-laminate', 'no-flow-prepreg', 'conductor'] as const

interface Asymmetry {
  readonly fraction: number
  readonly layers: readonly ZoneLayerResult[]
  readonly remark?: string
}

/**
 * Layers of one kind are paired, first with last: their thicknesses are compared, as a share of the thicker. The middle one of an odd number has no
 * partner: its distance from the middle of the zone counts, as a share of half the zone's thickness.
 */
function findWorstAsymmetry(zone: ZoneResult): Asymmetry {
  let worst: Asymmetry = { fraction: 0, layers: [] }
  for (const kind of PAIRED_KINDS) {
    const layers = zone.layers.filter((layer) => layer.kind === kind && layer.coverageFraction !== 0)
    for (let first = 0; first < Math.ceil(layers.length / 2); first += 1) {
      const upper = layers[first]
      const lower = layers[layers.length - 1 - first]
      if (upper === undefined || lower === undefined) continue
      const found = upper === lower ? measureOffset(zone, upper) : measureDifference(upper, lower)
      if (found.fraction > worst.fraction) worst = found
    }
  }
  return worst
}

function measureDifference(upper: ZoneLayerResult, lower: ZoneLayerResult): Asymmetry {
  const thicker = Math.max(upper.nominalUm, lower.nominalUm)
  return {
    fraction: thicker === 0 ? 0 : Math.abs(upper.nominalUm - lower.nominalUm) / thicker,
    layers: [upper, lower],
    remark: `${upper.name} and ${lower.name} face each other.`,
  }
}

function measureOffset(zone: ZoneResult, layer: ZoneLayerResult): Asymmetry {
  const middleUm = layer.topDepthUm + layer.nominalUm / 2
  return {
    fraction: zone.thicknessUm === 0 ? 0 : Math.abs(middleUm - zone.thicknessUm / 2) / (zone.thicknessUm / 2),
    layers: [layer],
    remark: `${layer.name} has no partner on the other side and does not lie in the middle.`,
  }
}

import { explainOutsideHatchTable, HATCH_BAR_OVER_PITCH, type HatchPattern, hatchWidthFraction } from '../bending'
import { callByName, type Hatch, type Material } from '../design'
import type { MissingInput, ModelLimit } from '../results'
import type { DesignIndex } from './design-index'
import type { SectionCopper, SectionLayer, ZoneSection } from './zone-section'

/** How the copper of a layer stands in the width of a bend. */
export interface CopperForm {
  /** Width of solid copper that is as stiff: the coverage of conductors, and what the tables say for a hatch. */
  readonly widthFraction: number
  /** The least that it may be. */
  readonly widthFractionLow: number
  readonly lateral: 'held' | 'free'
  readonly modelLimit: ModelLimit | null
}

/**
 * Conductors with gaps contract sideways, a solid plane is held by its own width. A hatch has the stiffness of its tables as a wide strip,
 * and may have that of a narrow one: where one goes over into the other is not known.
 */
export function describeCopper({
  source,
  copper,
  material,
  zoneSection: { zone },
  index,
}: {
  source: SectionLayer
  copper: SectionCopper
  material: Material
  zoneSection: ZoneSection
  index: DesignIndex
}): CopperForm | { readonly missing: MissingInput } {
  const { layer, coverageFraction, fillMaterial } = copper
  const isPlane = layer.role !== 'signal'
  if (!isPlane || layer.planePattern !== 'hatched') {
    const isHeld = coverageFraction === 1 || (isPlane && layer.planePattern === 'solid')
    return {
      widthFraction: coverageFraction,
      widthFractionLow: coverageFraction,
      lateral: isHeld ? 'held' : 'free',
      modelLimit: null,
    }
  }
  const presenceAt = zone.presence.findIndex(({ layerId }) => layerId === layer.id)
  const hatch = zone.presence[presenceAt]?.hatch ?? null
  if (hatch === null) {
    const zoneAt = index.design.construction.zones.indexOf(zone)
    return {
      missing: {
        path: ['construction', 'zones', zoneAt, 'presence', presenceAt, 'hatch'],
        label: `bar, pitch and angle of the hatched plane ${source.layer.name} in ${callByName('zone', zone.name)}`,
      },
    }
  }
  const pattern = toPattern(hatch)
  const outside = explainOutsideHatchTable(pattern)
  const fractions = hatchWidthFraction(outside === null ? pattern : nearestSolved(pattern), {
    modulusGpa: material.modulusGpa.value,
    poisson: material.poisson.value,
    fillModulusGpa: fillMaterial?.modulusGpa.value ?? 0,
    fillPoisson: fillMaterial?.poisson.value ?? 0,
  })
  if (fractions === null) throw new RangeError(`hatch of ${layer.name} has no figure`)
  return {
    widthFraction: fractions.wide,
    widthFractionLow: Math.min(fractions.narrow, fractions.wide),
    lateral: 'held',
    modelLimit:
      outside === null
        ? null
        : {
            kind: 'hatch',
            because: `${outside} (${layer.name})`,
            decidedBy: 'bend a sample, or hatch it within that range',
          },
  }
}

export function toPattern({ barMm, pitchMm, angleDeg }: Hatch): HatchPattern {
  return { barOverPitch: barMm / pitchMm, angleDeg }
}

/** For a figure to go by where the tables do not reach. */
function nearestSolved({ barOverPitch, angleDeg }: HatchPattern): HatchPattern {
  const { low, high } = HATCH_BAR_OVER_PITCH
  return { barOverPitch: Math.min(high, Math.max(low, barOverPitch)), angleDeg: angleDeg < 22.5 ? 0 : 45 }
}

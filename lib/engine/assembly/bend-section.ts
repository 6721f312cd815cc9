import type { TolerancedLayer } from '../bending'
import { yieldStrainPct } from '../bending'
import type { Bend, Material } from '../design'
import type { MissingInput } from '../results'
import type { DesignIndex } from './design-index'
import type { SectionCopper, SectionLayer, ZoneSection } from './zone-section'

/** A bend's section: its zone's layers from the inside face outward, parted into leaves at unbonded gaps. */
export interface BendSection {
  readonly leaves: readonly LeafSection[]
  /** One fewer than leaves. */
  readonly gapsUm: readonly number[]
  readonly thicknessUm: number
  readonly conductors: readonly ConductorInBend[]
}

export interface LeafSection {
  readonly leafIndex: number
  readonly layers: readonly TolerancedLayer[]
  readonly sources: readonly SectionLayer[]
}

/** A conductor layer that has copper in the bend. */
export interface ConductorInBend {
  readonly leafIndex: number
  readonly source: SectionLayer
  readonly copper: SectionCopper
  readonly material: Material
  readonly foil: NonNullable<Material['foil']>
  readonly yieldStrainPct: number
}

/** A tolerance may take a layer to a hundredth of its thickness, not to nothing: the section must keep its order. */
const LEAST_REMAINING_FRACTION = 0.01

/**
 * Lays a zone's layers out for a bend. Layers that came to nothing (an adhesive that flowed away entirely, a conductor
 * layer without copper here) are left out.
 *
 * @returns the missing inputs instead where a layer's material is not known
 */
export function buildBendSection(
  zoneSection: ZoneSection,
  insideFace: Bend['insideFace'],
  index: DesignIndex,
): BendSection | { readonly missing: readonly MissingInput[] } {
  const ordered = insideFace === 'top' ? zoneSection.layers : zoneSection.layers.toReversed()
  const missing: MissingInput[] = []
  const leaves: { leafIndex: number; layers: TolerancedLayer[]; sources: SectionLayer[] }[] = []
  const gapsUm: number[] = []
  const conductors: ConductorInBend[] = []
  let thicknessUm = 0
  let pendingGapUm = 0
  let isLeafOpen = false
  for (const source of ordered) {
    if (source.layer.kind === 'unbonded-gap') {
      // Air outside the outermost leaf bends nothing; between leaves it sets the outer one's radius.
      if (leaves.length > 0) pendingGapUm += source.nominalUm
      isLeafOpen = false
      continue
    }
    if (source.nominalUm <= 0) continue
    if (source.material === null) {
      missing.push({
        path: ['construction', 'layers', source.position, 'materialId'],
        label: `material of layer ${source.layer.name}`,
      })
      continue
    }
    if (!isLeafOpen) {
      if (leaves.length > 0) {
        gapsUm.push(pendingGapUm)
        thicknessUm += pendingGapUm
        pendingGapUm = 0
      }
      leaves.push({ leafIndex: leaves.length, layers: [], sources: [] })
      isLeafOpen = true
    }
    const leaf = leaves[leaves.length - 1]
    if (leaf === undefined) continue
    leaf.layers.push(makeBendLayer(source, source.material))
    leaf.sources.push(source)
    thicknessUm += source.nominalUm
    const { copper, material } = source
    if (copper === null) continue
    const { foil } = material
    if (foil === null) {
      missing.push({
        path: ['construction', 'layers', source.position, 'materialId'],
        label: `foil data of ${material.name} in layer ${source.layer.name}`,
      })
      continue
    }
    conductors.push({
      leafIndex: leaf.leafIndex,
      source,
      copper,
      material,
      foil,
      yieldStrainPct: yieldStrainPct({
        yieldStrengthMpa: foil.yieldStrengthMpa.value,
        modulusGpa: material.modulusGpa.value,
        poisson: material.poisson.value,
      }),
    })
  }
  if (leaves.length === 0 && missing.length === 0) {
    missing.push({
      path: ['construction', 'zones', index.design.construction.zones.indexOf(zoneSection.zone), 'presence'],
      label: `layers of zone ${zoneSection.zone.name}`,
    })
  }
  return missing.length > 0 ? { missing } : { leaves, gapsUm, thicknessUm, conductors }
}

function makeBendLayer(
  { layer, nominalUm, minusUm, plusUm, copper }: SectionLayer,
  material: Material,
): TolerancedLayer {
  const common = {
    id: layer.id,
    thicknessUm: nominalUm,
    minusUm: Math.min(minusUm, nominalUm * (1 - LEAST_REMAINING_FRACTION)),
    plusUm,
    modulusGpa: material.modulusGpa.value,
    poisson: material.poisson.value,
  }
  if (copper === null) return common
  const { fillMaterial, coverageFraction } = copper
  return {
    ...common,
    conductor: {
      coverageFraction,
      fillModulusGpa: fillMaterial?.modulusGpa.value ?? 0,
      fillPoisson: fillMaterial?.poisson.value ?? 0,
    },
    ...(material.foil === null ? {} : { yieldStrengthMpa: material.foil.yieldStrengthMpa.value }),
  }
}

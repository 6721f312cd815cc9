import { callByName, type Material } from '../design'
import type { MissingInput } from '../results'
import type { DesignIndex } from './design-index'
import type { SectionLayer } from './zone-section'

/** Copper of one material in a bent section. */
export interface CopperPart {
  /** The design layer's own id for its foil; another one for plating. */
  readonly id: string
  readonly thicknessUm: number
  readonly minusUm: number
  readonly plusUm: number
  readonly material: Material
  readonly foil: NonNullable<Material['foil']>
}

/**
 * The foil of a conductor layer and what was plated on it, innermost first.
 *
 * Rules    Plating lies on the face away from the base film or laminate that the foil was bonded to, since that face is shut when the bath
 *          comes. Where both faces or neither have one, it is taken to lie on the face that is farther from the middle, where it strains
 *          most. The processing loss comes off last, so off the plating first.
 */
export function layPlating(
  ordered: readonly SectionLayer[],
  at: number,
  index: DesignIndex,
): { readonly parts: readonly CopperPart[] } | { readonly missing: MissingInput } {
  const source = ordered[at]
  const copper = source?.copper ?? null
  const material = source?.material ?? null
  const foil = material?.foil ?? null
  if (source === undefined || copper === null || material === null || foil === null) return { parts: [] }
  const { layer } = copper
  const whole: CopperPart = {
    id: layer.id,
    thicknessUm: source.nominalUm,
    minusUm: source.minusUm,
    plusUm: source.plusUm,
    material,
    foil,
  }
  const platingUm = Math.min(source.nominalUm, Math.max(0, copper.platingUm - copper.lossUm))
  if (platingUm <= 0) return { parts: [whole] }
  const platingMaterial = layer.plating.materialId === null ? null : index.findMaterial(layer.plating.materialId)
  const platingFoil = platingMaterial?.foil ?? null
  if (platingMaterial === null || platingFoil === null) {
    return {
      missing: {
        path: ['construction', 'layers', source.position, 'plating', 'materialId'],
        label: `copper data of the plating on ${callByName('layer', layer.name)}`,
      },
    }
  }
  const platingToleranceUm = Math.min(layer.plating.toleranceUm, copper.platingUm)
  const plating: CopperPart = {
    id: `${layer.id} plating`,
    thicknessUm: platingUm,
    minusUm: platingToleranceUm,
    plusUm: platingToleranceUm,
    material: platingMaterial,
    foil: platingFoil,
  }
  const foilUm = source.nominalUm - platingUm
  if (foilUm <= 0) return { parts: [plating] }
  const own: CopperPart = {
    ...whole,
    thicknessUm: foilUm,
    minusUm: Math.min(layer.toleranceMinusUm, foilUm),
    plusUm: layer.tolerancePlusUm,
  }
  return { parts: isPlatedOnInside(ordered, at) ? [plating, own] : [own, plating] }
}

function isPlatedOnInside(ordered: readonly SectionLayer[], at: number): boolean {
  const isBaseInside = isBase(ordered[at - 1], ordered[at - 2])
  const isBaseOutside = isBase(ordered[at + 1], ordered[at + 2])
  return isBaseInside === isBaseOutside ? at < ordered.length / 2 : isBaseOutside
}

/** The film or laminate of the foil's own clad, its adhesive between them or not. */
function isBase(next: SectionLayer | undefined, beyond: SectionLayer | undefined): boolean {
  const kind = next?.layer.kind
  if (kind === 'base-film' || kind === 'rigid-laminate') return true
  return kind === 'adhesive' && beyond?.layer.kind === 'base-film'
}

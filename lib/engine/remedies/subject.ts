import type { Bend, ConductorLayer, Design, Layer, Material, Zone } from '../design'
import type { Limit } from '../results'
import { inSentence } from '../units'
import type { BendAssessment } from './assess'
import type { ForbiddenNeed, RemedyChange } from './remedy'

/** A layer of the bend's zone, in the order of the construction. */
export interface PresentLayer {
  readonly layer: Layer
  readonly coverageFraction: number
}

export interface PresentConductor {
  readonly layer: ConductorLayer
  readonly coverageFraction: number
  /** Index in `Subject.layers`. */
  readonly at: number
}

/** The bend that a remedy is sought for, as the families look at it. */
export interface Subject {
  readonly design: Design
  readonly bend: Bend
  readonly zone: Zone
  /** Layers of the zone from the top face down. */
  readonly layers: readonly PresentLayer[]
  /** Those of them that carry copper there. */
  readonly conductors: readonly PresentConductor[]
  readonly assessment: BendAssessment
  readonly findMaterial: (materialId: string) => Material | null
  readonly getLimit: (key: string) => Limit
  /** Assesses an edit of this design; what it left alone is not computed again. */
  readonly assess: (edited: Design) => BendAssessment | null
}

/** A change that a family proposes. */
export interface Candidate extends RemedyChange {
  readonly edited: Design
  /** Two changes that share a key cannot be paired. */
  readonly touches: readonly string[]
  /** What stands against it before anything is computed. */
  readonly forbiddenBy: readonly ForbiddenNeed[]
}

export type Family = (subject: Subject) => readonly Candidate[]

export function describeZone(design: Design, bend: Bend): Pick<Subject, 'zone' | 'layers' | 'conductors'> | null {
  const zone = design.construction.zones.find(({ id }) => id === bend.zoneId)
  if (zone === undefined) return null
  const coverages = new Map(zone.presence.map(({ layerId, coverageFraction }) => [layerId, coverageFraction]))
  const layers: PresentLayer[] = []
  const conductors: PresentConductor[] = []
  for (const layer of design.construction.layers) {
    const own = coverages.get(layer.id)
    if (own === undefined) continue
    const coverageFraction = layer.kind === 'conductor' ? (own ?? layer.coverageFraction) : 1
    if (layer.kind === 'conductor' && coverageFraction > 0) {
      conductors.push({ layer, coverageFraction, at: layers.length })
    }
    layers.push({ layer, coverageFraction })
  }
  return { zone, layers, conductors }
}

/** Conductors of a layer that cross the bend, by the design's own list. */
export function listCrossing(design: Design, bendId: string, layerId: string): Design['features']['conductors'] {
  return design.features.conductors.filter(
    (conductor) => conductor.layerId === layerId && conductor.crossings.some((crossing) => crossing.bendId === bendId),
  )
}

/** `25`, `12.5`, `17.1`: a thickness as it is written in a layer table. */
export function writeUm(thicknessUm: number): string {
  return inSentence(thicknessUm, 'um')
}

export function writePct(fraction: number): string {
  return `${Math.round(100 * fraction)} %`
}

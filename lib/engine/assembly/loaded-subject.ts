import { withConstant } from '../bending'
import type { FatigueFoil } from '../life'
import { computeAtNominal, type NominalInputs, withoutRanges } from './bend-at-nominal'
import type { BendSection, ConductorInBend, LeafSection } from './bend-section'
import type { PartEntry } from './conductor-entry'
import { type Change, makeSubject, type SwingSubject } from './swing-subject'

/** The copper that inputs are moved for in a bend with states or loads: of foil and plating the one with less to spare. */
export function chooseLoadedSubject(inputs: NominalInputs, governingLayerId: string | null): SwingSubject | null {
  const governing = computeAtNominal(withoutRanges(inputs))?.find(({ result }) => result.layerId === governingLayerId)
  const conductor = inputs.section.conductors.find(({ copper }) => copper.layer.id === governingLayerId)
  if (governing === undefined || conductor === undefined) return null
  const hasLess = inputs.bend.use === 'dynamic' ? breaksSooner : isNearerItsLimit
  const least = governing.parts.reduce<PartEntry | null>(
    (found, part) => (found === null || hasLess(part, found) ? part : found),
    null,
  )
  const { plating } = conductor
  const chosen = plating !== null && plating.bendLayerId === least?.bendLayerId ? plating : conductor
  return makeSubject(inputs.bend, inputs.section, chosen, inputs.demand)
}

const lifeOf = ({ result }: PartEntry): number => result.survivalLifeCycles ?? Number.POSITIVE_INFINITY

const breaksSooner = (part: PartEntry, than: PartEntry): boolean => lifeOf(part) < lifeOf(than)

const shareOf = ({ result: { peakStrainPct, allowablePct } }: PartEntry): number =>
  peakStrainPct / (allowablePct ?? Number.POSITIVE_INFINITY)

const isNearerItsLimit = (part: PartEntry, than: PartEntry): boolean => shareOf(part) > shareOf(than)

/** The section of a bend with one number of one layer, and the foil of the copper that inputs are moved for, elsewhere. */
export function moveSection(
  section: BendSection,
  change: Change | null,
  { conductor: { leafIndex, bendLayerId } }: SwingSubject,
  foil: FatigueFoil,
): BendSection {
  const moveFoil = (conductor: ConductorInBend): ConductorInBend => {
    const plating = conductor.plating === null ? null : moveFoil(conductor.plating)
    if (conductor.leafIndex !== leafIndex || conductor.bendLayerId !== bendLayerId) return { ...conductor, plating }
    const { material, foil: own } = conductor
    return {
      ...conductor,
      plating,
      material: { ...material, modulusGpa: { ...material.modulusGpa, value: foil.modulusGpa } },
      foil: {
        ...own,
        fatigueDuctility: { ...own.fatigueDuctility, value: foil.fatigueDuctility },
        tensileStrengthMpa: { ...own.tensileStrengthMpa, value: foil.tensileStrengthMpa },
      },
    }
  }
  return {
    ...section,
    leaves: section.leaves.map((leaf) =>
      change !== null && leaf.leafIndex === leafIndex ? moveLayer(leaf, change) : leaf,
    ),
    conductors: section.conductors.map(moveFoil),
  }
}

function moveLayer(leaf: LeafSection, { layerIndex, quantity, value }: Change): LeafSection {
  return {
    ...leaf,
    layers: leaf.layers.map((layer, at) =>
      at !== layerIndex
        ? layer
        : quantity === 'thicknessUm'
          ? { ...layer, thicknessUm: value }
          : withConstant(layer, quantity, value),
    ),
  }
}

import type { Design } from '@/lib/engine'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { countConductorLayers, findConstructionFamily } from '../construction-family'
import { readNestedPart } from '../panel'
import { type Estimate, estimate, type FabricatorBasis } from './estimate'
import type { Nester } from './nest-cache'

/** Another construction of the same part. */
export interface Alternative {
  readonly id: string
  readonly name: string
  readonly design: Design
}

/** Which alternatives count as ones that meet the need, in words. */
export const ALTERNATIVE_RULE =
  'An alternative counts where it is of the same family (rigid-flex or flexible) and has at least as many conductor layers.'

/**
 * The ready-made constructions as ways to make this part: their layers and zones, with this part's outline, openings,
 * stiffeners, finish and tests. Only what the process depends on is meant by them.
 */
export function listAlternatives(design: Design): Alternative[] {
  const isRigidFlex = findConstructionFamily(design) === 'rigid-flex'
  const layerCount = countConductorLayers(design)
  return listStartingConstructions().flatMap(({ id, name, makeDesign }) => {
    const { construction } = makeDesign(name)
    const alternative: Design = { ...design, name, construction, materials: [], bends: [] }
    const isAlike =
      (findConstructionFamily(alternative) === 'rigid-flex') === isRigidFlex &&
      countConductorLayers(alternative) >= layerCount
    return isAlike ? [{ id, name, design: alternative }] : []
  })
}

export interface ComparedCost {
  /** The design's cost over that of the cheapest construction, itself included; at least 1. */
  readonly ratio: number
  readonly cheapestName: string | null
}

/** Null where the design or its part cannot be priced. */
export function compareWithAlternatives(design: Design, basis: FabricatorBasis, nest: Nester): ComparedCost | null {
  const own = getIndex(estimate(design, basis, nest))
  if (own === null) return null
  let cheapest = own
  let cheapestName: string | null = null
  for (const { name, design: other } of listAlternatives(withKnownPart(design))) {
    const index = getIndex(estimate(other, basis, nest))
    if (index === null || index >= cheapest) continue
    cheapest = index
    cheapestName = name
  }
  return { ratio: own / cheapest, cheapestName }
}

function getIndex(result: Estimate): number | null {
  return result.ok ? (result.cost?.indexPerGoodPart ?? null) : null
}

/** A part that is read off its zones keeps its rectangle where the zones are another construction's. */
export function withKnownPart(design: Design): Design {
  const known = design.features.outline
  if (known !== null) return design
  const reading = readNestedPart(design)
  if (!reading.ok) return design
  const { outline, rollingDirection } = reading.part
  const verticesMm = outline.map(([x, y]): [number, number] => [x / 1000, y / 1000])
  return { ...design, features: { ...design.features, outline: { verticesMm, rollingDirection } } }
}

import type { FaceRange, Leaf, Loading } from '../bending'
import type { Bend } from '../design'
import type { FatigueFoil } from '../life'
import type { LeafResult, MissingInput, ModelLimit, QuantityRange } from '../results'
import { findAxisOffsetRange } from './axis-offset-range'
import { getFatigueFoil, type SurvivalDemand } from './bend-allowables'
import type { FlexedLeaf } from './bend-life'
import type { BendSection, ConductorInBend, LeafSection } from './bend-section'
import type { StatedStates } from './bend-states'
import type { ConductorEntry, PartEntry, PartStrains } from './conductor-entry'
import { describePart } from './conductor-parts'
import { readElasticStack } from './elastic-stack'
import type { HeldPull } from './leaf-pull'
import { addLoads, computeLeafStates, type LeafStates } from './leaf-states'
import { mergeParts } from './merge-parts'

/** How a bend loads its copper: what is made once or a few times and left is formed. */
export function loadingOf({ use, motion }: Bend): Loading {
  return use === 'dynamic' ? motion : 'once'
}

/**
 * Strain, range, allowable and life of every conductor layer of a bend, leaf by leaf. Foil and plating are judged apart; the layer's
 * figures are those of the one that has less to spare.
 *
 * @param missing  receives the inputs that absent allowables lack
 */
export function computeConductors(
  {
    bend,
    section,
    demand,
    states,
    heldPulls = [],
  }: {
    bend: Bend
    section: BendSection
    demand: SurvivalDemand
    states: StatedStates
    heldPulls?: readonly (HeldPull | null)[]
  },
  leaves: readonly Leaf[],
  missing: MissingInput[],
): {
  conductors: ConductorEntry[]
  flexed: FlexedLeaf[]
  faceFilms: LeafResult['faceFilms'][]
  /** In the order of the leaves. */
  leafStates: LeafStates[]
  limits: ModelLimit[]
} {
  const conductors: ConductorEntry[] = []
  const flexed: FlexedLeaf[] = []
  const faceFilms: LeafResult['faceFilms'][] = []
  const leafStates: LeafStates[] = []
  const limits: ModelLimit[] = []
  const loading = loadingOf(bend)
  for (const leafSection of section.leaves) {
    const { leafIndex, layers } = leafSection
    const leaf = leaves[leafIndex]
    if (leaf === undefined) continue
    const inLeaf = computeLeafStates(bend, leaf, leafSection, loading, states, heldPulls[leafIndex] ?? null)
    leafStates.push(inLeaf)
    limits.push(...inLeaf.limits)
    const elastic = bend.use === 'dynamic' ? readElasticStack(leaf, leafSection) : null
    const foils = new Map<string, FatigueFoil>()
    for (const conductor of section.conductors) {
      if (conductor.leafIndex !== leafIndex) continue
      const copperParts = conductor.plating === null ? [conductor] : [conductor, conductor.plating]
      const parts = copperParts.flatMap((part): PartEntry[] => {
        const strains = findStrains(part, leafSection, inLeaf)
        if (strains === null) return []
        const foil = getFatigueFoil(part)
        foils.set(part.bendLayerId, foil)
        return [describePart({ part, leaf, inLeaf, strains, foil, bend, demand, states, missing })]
      })
      const merged = mergeParts(parts)
      if (merged === null) continue
      const ids = new Set(parts.map(({ bendLayerId }) => bendLayerId))
      const axisOffsetRangeFraction =
        elastic === null
          ? null
          : findAxisOffsetRange(
              elastic,
              layers.findIndex(({ id }) => ids.has(id)),
              layers.findLastIndex(({ id }) => ids.has(id)),
            )
      conductors.push({ ...merged, result: { ...merged.result, axisOffsetRangeFraction } })
    }
    faceFilms.push(listFaceFilms(leafSection, inLeaf))
    flexed.push({ section: leaf.section, innerDepthUm: leaf.innerDepthUm, foils })
  }
  return { conductors, flexed, faceFilms, leafStates, limits }
}

function findStrains(
  { bendLayerId }: ConductorInBend,
  { layers }: LeafSection,
  { first, deciding, fold }: LeafStates,
): PartStrains | null {
  const read = ({ strain, ranges }: LeafStates['first']) => {
    const found = strain.conductors.find(({ id }) => id === bendLayerId)
    const range = ranges.find(({ id }) => id === bendLayerId)
    return found === undefined || range === undefined ? null : { strain: found, range }
  }
  const [atFirst, atDeciding] = [read(first), read(deciding)]
  if (atFirst === null || atDeciding === null) return null
  return {
    at: layers.findIndex(({ id }) => id === bendLayerId),
    first: atFirst.strain,
    firstRange: atFirst.range,
    deciding: atDeciding.strain,
    decidingRange: atDeciding.range,
    fold: fold === null ? null : read(fold),
  }
}

/** A film has its strain at the tighter end, mean and range together: that is what yields it. */
function listFaceFilms(
  { layers, sources }: LeafSection,
  { first: { surfaces }, fold, loads }: LeafStates,
): LeafResult['faceFilms'] {
  const describe = (
    side: 'inner' | 'outer',
    at: number,
    range: FaceRange,
    foldRange: FaceRange | null,
  ): LeafResult['faceFilms'] => {
    const source = sources[at]
    const layer = layers[at]
    const filmYieldStrainPct = layer?.yieldStrainPct
    const spread = layer?.spreads?.find(({ constant }) => constant === 'yieldStrainPct')
    if (source === undefined || filmYieldStrainPct === undefined) return []
    const bending = readMagnitudes(range)
    const total = loads === null ? bending : addLoads(bending, loads, loads.pullFirst, { from: at, to: at })
    return [
      {
        side,
        layerId: source.layer.id,
        name: source.layer.name,
        strainPct: total.nominalPct,
        strainRangePct: total.range,
        yieldStrainPct: filmYieldStrainPct,
        yieldRangePct: { low: spread?.low ?? filmYieldStrainPct, high: spread?.high ?? filmYieldStrainPct },
        fold: foldRange === null ? null : toFigure(readMagnitudes(foldRange)),
      },
    ]
  }
  return [
    ...describe('inner', 0, surfaces.inner, fold?.surfaces.inner ?? null),
    ...describe('outer', layers.length - 1, surfaces.outer, fold?.surfaces.outer ?? null),
  ]
}

function readMagnitudes({ nominalPct, minPct, maxPct }: FaceRange): { nominalPct: number; range: QuantityRange } {
  return {
    nominalPct: Math.abs(nominalPct),
    range: {
      low: minPct <= 0 && maxPct >= 0 ? 0 : Math.min(Math.abs(minPct), Math.abs(maxPct)),
      high: Math.max(Math.abs(minPct), Math.abs(maxPct)),
    },
  }
}

const toFigure = ({ nominalPct, range }: { nominalPct: number; range: QuantityRange }) => ({
  strainPct: nominalPct,
  rangePct: range,
})

import {
  findAxisUm,
  isYieldBeyond,
  type LayerConstant,
  type Loading,
  readConstant,
  type Strip,
  stripsOf,
  type TolerancedLayer,
  withConstant,
  yieldScaleOf,
} from '../bending'
import type { Bend } from '../design'
import { computeAllowableStrain, type FatigueFoil } from '../life'
import { getFatigueFoil, type SurvivalDemand, survivalOf } from './bend-allowables'
import { loadingOf } from './bend-conductors'
import type { BendSection, ConductorInBend } from './bend-section'

/** One number of one layer that stands elsewhere than the bend has it. */
export interface Change {
  readonly layerIndex: number
  readonly quantity: 'thicknessUm' | LayerConstant
  readonly value: number
}

/** The copper of a bend that inputs are moved for, one at a time. */
export interface SwingSubject {
  readonly bend: Bend
  readonly layers: readonly TolerancedLayer[]
  readonly names: ReadonlyMap<string, string>
  readonly conductor: ConductorInBend
  /** Inside radius of its leaf. */
  readonly radiusMm: number
  readonly foil: FatigueFoil
  readonly strainPctAt: (change: Change | null, radiusMm: number) => number
  /** Null where nothing is allowed. */
  readonly allowedPct: (foil: FatigueFoil) => number | null
}

/** Of foil and plating the copper with less to spare. */
export function chooseSubject(
  bend: Bend,
  section: BendSection,
  conductor: ConductorInBend,
  demand: SurvivalDemand,
): SwingSubject {
  const own = makeSubject(bend, section, conductor, demand)
  if (conductor.plating === null) return own
  const plating = makeSubject(bend, section, conductor.plating, demand)
  const shareOf = ({ strainPctAt, radiusMm, allowedPct, foil }: SwingSubject): number =>
    strainPctAt(null, radiusMm) / (allowedPct(foil) ?? Number.POSITIVE_INFINITY)
  return shareOf(plating) > shareOf(own) ? plating : own
}

export function makeSubject(
  bend: Bend,
  section: BendSection,
  conductor: ConductorInBend,
  demand: SurvivalDemand,
): SwingSubject {
  const leaf = section.leaves[conductor.leafIndex]
  if (leaf === undefined) throw new RangeError(`no leaf ${conductor.leafIndex}`)
  let insideUm = 0
  for (let at = 0; at < conductor.leafIndex; at += 1) {
    for (const { thicknessUm } of section.leaves[at]?.layers ?? []) insideUm += thicknessUm
    insideUm += section.gapsUm[at] ?? 0
  }
  const radiusMm = bend.insideRadiusMm + insideUm / 1000
  const foil = getFatigueFoil(conductor)
  const nominalAllowedPct = findAllowed(bend, conductor, foil, demand)
  return {
    bend,
    layers: leaf.layers,
    names: new Map(leaf.layers.map(({ id }, at) => [id, leaf.sources[at]?.layer.name ?? id])),
    conductor,
    radiusMm,
    foil,
    strainPctAt: makeStrainPctAt(leaf.layers, conductor.bendLayerId, loadingOf(bend), radiusMm),
    allowedPct: (own) => (own === foil ? nominalAllowedPct : findAllowed(bend, conductor, own, demand)),
  }
}

/**
 * Deciding strain of one conductor, as computeBendStrain gives it, with at most one number of one layer other than the bend has it: what
 * stays is not worked out again.
 */
function makeStrainPctAt(
  layers: readonly TolerancedLayer[],
  bendLayerId: string,
  loading: Loading,
  nominalRadiusMm: number,
): SwingSubject['strainPctAt'] {
  const own = layers.findIndex(({ id }) => id === bendLayerId)
  const nominalUm = layers.map(({ thicknessUm }) => thicknessUm)
  const nominalStrips = layers.map((layer) => stripsOf(layer))
  const yieldScale = yieldScaleOf(loading)
  const axisAt = (
    thicknessUm: readonly number[],
    strips: readonly (readonly Strip[])[],
    radiusMm: number,
    startUm?: number,
  ): number => findAxisUm({ thicknessUm, strips }, { insideRadiusUm: radiusMm * 1000 }, yieldScale, startUm)
  const nominalAxisUm = axisAt(nominalUm, nominalStrips, nominalRadiusMm)
  const read = (thicknessUm: readonly number[], axisUm: number, radiusMm: number): number => {
    let innerUm = 0
    for (let at = 0; at < own; at += 1) innerUm += thicknessUm[at] ?? 0
    const outerUm = innerUm + (thicknessUm[own] ?? 0)
    const armUm = Math.max(Math.abs(innerUm - axisUm), Math.abs(outerUm - axisUm))
    return (100 * armUm) / (radiusMm * 1000 + axisUm)
  }
  const nominalPct = read(nominalUm, nominalAxisUm, nominalRadiusMm)
  const largestStrain = listLargestStrains(nominalUm, nominalAxisUm, nominalRadiusMm)
  /** A yield that no strain in the layer reaches, where it is or where it goes. */
  const isUnreached = ({ layerIndex, quantity, value }: Change, layer: TolerancedLayer): boolean => {
    const strip = nominalStrips[layerIndex]?.[0]
    if (quantity === 'thicknessUm' || strip === undefined) return false
    const nominal = readConstant(layer, quantity)
    const least = Math.min(value, nominal)
    return isYieldBeyond(quantity, least, { strip, value: nominal }, (largestStrain[layerIndex] ?? 0) / yieldScale)
  }
  return (change, radiusMm) => {
    const layer = change === null ? undefined : layers[change.layerIndex]
    if (change === null || layer === undefined) {
      if (radiusMm === nominalRadiusMm) return nominalPct
      return read(nominalUm, axisAt(nominalUm, nominalStrips, radiusMm, nominalAxisUm), radiusMm)
    }
    const { layerIndex, quantity, value } = change
    if (quantity === 'thicknessUm') {
      const thicknessUm = nominalUm.with(layerIndex, value)
      return read(thicknessUm, axisAt(thicknessUm, nominalStrips, radiusMm, nominalAxisUm), radiusMm)
    }
    if (radiusMm === nominalRadiusMm && isUnreached(change, layer)) return nominalPct
    const strips = nominalStrips.with(layerIndex, stripsOf(withConstant(layer, quantity, value)))
    return read(nominalUm, axisAt(nominalUm, strips, radiusMm, nominalAxisUm), radiusMm)
  }
}

function listLargestStrains(thicknessUm: readonly number[], axisUm: number, radiusMm: number): number[] {
  let depthUm = 0
  return thicknessUm.map((um) => {
    const innerUm = depthUm
    depthUm += um
    return Math.max(Math.abs(innerUm - axisUm), Math.abs(depthUm - axisUm)) / (radiusMm * 1000 + axisUm)
  })
}

function findAllowed(bend: Bend, conductor: ConductorInBend, foil: FatigueFoil, demand: SurvivalDemand): number | null {
  const record = conductor.foil
  switch (bend.use) {
    case 'fold-once':
      return record.allowableFoldOncePct?.value ?? null
    case 'flex-to-install':
      return record.allowableInstallPct?.value ?? null
    case 'dynamic':
      return bend.requiredCycles === null
        ? null
        : computeAllowableStrain({
            foil,
            requiredCycles: Math.max(1, bend.requiredCycles),
            motion: bend.motion,
            survival: survivalOf(demand, conductor),
          }).strainPct
    case null:
      return null
  }
}

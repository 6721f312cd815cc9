import { computeLeaves, type LayerConstant, readConstant } from '../bending'
import type { Design } from '../design'
import type { TestedLife } from '../flex-tests'
import type { FatigueFoil } from '../life'
import { readEnds } from '../materials'
import { type Bound, type Quantity, readRelationLife } from '../results'
import { readSurvivalDemand, type SurvivalDemand, survivalOf } from './bend-allowables'
import { loadingOf } from './bend-conductors'
import { computeConductorLife } from './bend-life'
import { buildBendSection } from './bend-section'
import { isMoreThanOneState, readStates } from './bend-states'
import { indexDesign } from './design-index'
import { applyOwnTests, livesFor } from './own-tests'
import { type Change, chooseSubject, type SwingSubject } from './swing-subject'
import { buildZoneSection } from './zone-section'

/** What one input does to a bend when it alone goes from one end of its range to the other. */
export interface Swing {
  readonly kind: 'thickness' | 'radius' | 'constant'
  /** Null for the radius, which is the bend's. */
  readonly layerId: string | null
  readonly layerName: string
  readonly quantity: SwingQuantity
  readonly low: number
  readonly nominal: number
  readonly high: number
  /** Strain of the copper that decides, with the input at its low and at its high end. */
  readonly strainAtLowPct: number
  readonly strainAtHighPct: number
  /** Life at the survival asked for; null where the bend is not dynamic. */
  readonly lifeAtLowCycles: number | null
  readonly lifeAtHighCycles: number | null
  /** Where a life ends where the relation ends. */
  readonly lifeAtLowBound: Bound | null
  readonly lifeAtHighBound: Bound | null
}

export type SwingQuantity = 'thicknessUm' | 'insideRadiusMm' | LayerConstant | 'tensileStrengthMpa' | 'fatigueDuctility'

export interface Tornado {
  readonly bendId: string
  readonly bendName: string
  readonly layerName: string
  readonly strainPct: number
  readonly survivalPct: number
  readonly survivalLifeCycles: number | null
  /** The input that moves the strain or the life most first. */
  readonly swings: readonly Swing[]
}

/**
 * How far each thickness, each constant and the radius, moved alone over its range, move strain and life of the copper that decides.
 *
 * Model    the bend recomputed at both ends of each input, all others at nominal: it shows what matters, and not how they add up, which
 *          the range of the bend does
 * @param governingLayerId  as the evaluation of the bend reports it
 * @returns null where the design has no such bend or it cannot be computed, and where it states a second state or a load: each input is moved
 *          from one radius, from flat, alone
 */
export function computeTornado(
  design: Design,
  bendId: string,
  governingLayerId: string | null,
  testedLives: readonly TestedLife[] = [],
): Tornado | null {
  const bend = design.bends.find(({ id }) => id === bendId)
  const index = indexDesign(design)
  const zone = bend === undefined ? undefined : index.zonesById.get(bend.zoneId)
  if (bend === undefined || zone === undefined || isMoreThanOneState(readStates(bend))) return null
  const built = buildBendSection(buildZoneSection(zone, index), bend.insideFace, index)
  if ('missing' in built) return null
  const demand = readSurvivalDemand(design.brief)
  const fold = computeLeaves({
    leaves: built.leaves.map((leaf) => leaf.layers),
    gapsUm: built.gapsUm,
    insideRadiusMm: bend.insideRadiusMm,
    angleDeg: bend.angleDeg,
    loading: loadingOf(bend),
  })
  const lives = { demand, testedLives: livesFor(testedLives, design.materials) }
  const { section } = applyOwnTests(bend, built, lives, fold.leaves)
  const conductor = section.conductors.find(({ copper }) => copper.layer.id === governingLayerId)
  if (conductor === undefined) return null
  const subject = chooseSubject(bend, section, conductor, demand)
  const at = makeFindAt(subject, demand)
  const swings = listSwings(subject, at)
  const nominal = at(null, subject.radiusMm, subject.foil)
  const reach = ({ strainAtLowPct, strainAtHighPct, lifeAtLowCycles, lifeAtHighCycles }: Swing): number => {
    const strain = Math.abs(Math.log(Math.max(strainAtHighPct, 1e-12) / Math.max(strainAtLowPct, 1e-12)))
    const life =
      lifeAtLowCycles === null || lifeAtHighCycles === null ? 0 : Math.abs(Math.log(lifeAtHighCycles / lifeAtLowCycles))
    return life > 0 ? life : strain
  }
  return {
    bendId,
    bendName: bend.name,
    layerName: conductor.copper.layer.name,
    strainPct: nominal.strainPct,
    survivalPct: demand.survivalPct,
    survivalLifeCycles: nominal.life?.value ?? null,
    swings: swings.toSorted((a, b) => reach(b) - reach(a)),
  }
}

/** Strain and life of the copper that decides with one input moved. */
interface At {
  readonly strainPct: number
  readonly life: Quantity | null
}

type FindAt = (change: Change | null, radiusMm: number, foil: FatigueFoil) => At

function makeFindAt({ bend, conductor, strainPctAt }: SwingSubject, demand: SurvivalDemand): FindAt {
  const survival = survivalOf(demand, conductor)
  return (change, radiusMm, foil) => {
    const strainPct = strainPctAt(change, radiusMm)
    if (bend.use !== 'dynamic') return { strainPct, life: null }
    const life = computeConductorLife(foil, bend, survival, {
      nominal: strainPct,
      range: { low: strainPct, high: strainPct },
    })
    return {
      strainPct,
      life: readRelationLife({
        medianLifeCycles: life.medianCycles,
        survivalLifeCycles: life.survivalCycles,
        isLifeAtCap: life.isAtCap,
      }),
    }
  }
}

function listSwings(subject: SwingSubject, findAt: FindAt): Swing[] {
  const { layers, names, radiusMm, bend, foil, conductor } = subject
  const swings: Swing[] = []
  const add = (
    what: Pick<Swing, 'kind' | 'layerId' | 'layerName' | 'quantity' | 'low' | 'nominal' | 'high'>,
    at: (value: number) => At,
  ): void => {
    if (!(what.low < what.high)) return
    const low = at(what.low)
    const high = at(what.high)
    swings.push({
      ...what,
      strainAtLowPct: low.strainPct,
      strainAtHighPct: high.strainPct,
      lifeAtLowCycles: low.life?.value ?? null,
      lifeAtHighCycles: high.life?.value ?? null,
      lifeAtLowBound: low.life?.bound ?? null,
      lifeAtHighBound: high.life?.bound ?? null,
    })
  }
  add(
    {
      kind: 'radius',
      layerId: null,
      layerName: '',
      quantity: 'insideRadiusMm',
      low: radiusMm - bend.radiusToleranceMm,
      nominal: radiusMm,
      high: radiusMm + bend.radiusToleranceMm,
    },
    (value) => findAt(null, value, foil),
  )
  for (const [layerIndex, layer] of layers.entries()) {
    const place = { layerId: layer.id, layerName: names.get(layer.id) ?? layer.id }
    add(
      {
        kind: 'thickness',
        ...place,
        quantity: 'thicknessUm',
        low: layer.thicknessUm - layer.minusUm,
        nominal: layer.thicknessUm,
        high: layer.thicknessUm + layer.plusUm,
      },
      (value) => findAt({ layerIndex, quantity: 'thicknessUm', value }, radiusMm, foil),
    )
    for (const { constant, low, high } of layer.spreads ?? []) {
      // The modulus of the copper that decides is in its strength over modulus too.
      const isOwnModulus = constant === 'modulusGpa' && layer.id === conductor.bendLayerId
      add(
        { kind: 'constant', ...place, quantity: constant, low, nominal: readConstant(layer, constant), high },
        (value) =>
          findAt(
            { layerIndex, quantity: constant, value },
            radiusMm,
            isOwnModulus ? { ...foil, modulusGpa: value } : foil,
          ),
      )
    }
  }
  if (bend.use === 'dynamic') {
    for (const quantity of ['tensileStrengthMpa', 'fatigueDuctility'] as const) {
      const { low, high } = readEnds(quantity, conductor.foil[quantity])
      add(
        {
          kind: 'constant',
          layerId: conductor.bendLayerId,
          layerName: names.get(conductor.bendLayerId) ?? '',
          quantity,
          low,
          nominal: foil[quantity],
          high,
        },
        (value) => findAt(null, radiusMm, { ...foil, [quantity]: value }),
      )
    }
  }
  return swings
}

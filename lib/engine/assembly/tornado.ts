import { type LayerConstant, readConstant } from '../bending'
import type { Design } from '../design'
import type { TestedLife } from '../flex-tests'
import type { FatigueFoil } from '../life'
import { readEnds } from '../materials'
import { type Bound, describeCounted, type Quantity, readRelationLife } from '../results'
import { readSurvivalDemand, type SurvivalDemand, survivalOf } from './bend-allowables'
import { computeAtNominal, type NominalInputs, withoutRanges } from './bend-at-nominal'
import { computeConductorLife } from './bend-life'
import { buildBendSection } from './bend-section'
import { isMoreThanOneState } from './bend-states'
import { bendLeaves } from './bent-leaves'
import { describeStates } from './described-states'
import { indexDesign } from './design-index'
import { chooseLoadedSubject, moveSection } from './loaded-subject'
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
  /** What is counted beside one radius from flat, as a clause; null where there is nothing else. */
  readonly counted: string | null
  /** The input that moves the strain or the life most first. */
  readonly swings: readonly Swing[]
}

/**
 * How far each thickness, each constant and the radius, moved alone over its range, move strain and life of the copper that decides.
 *
 * Model    the bend recomputed at both ends of each input, all others at nominal: it shows what matters, and not how they add up, which
 * @param governingLayerId  as the evaluation of the bend reports it
 *          the range of the bend does. A bend with a second state or a load is worked out in full at each end, as for its verdict.
 * @returns null where the design has no such bend or it cannot be computed, and where its states contradict each other or a load, at the bend
 *          itself or at an end of an input, cannot be told
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
  if (bend === undefined || zone === undefined) return null
  const built = buildBendSection(buildZoneSection(zone, index), bend.insideFace, index)
  if ('missing' in built) return null
  const demand = readSurvivalDemand(design.brief)
  const heldOver = { zone, bends: design.bends.filter(({ zoneId }) => zoneId === bend.zoneId) }
  const { fold, states, held } = bendLeaves(bend, built, heldOver)
  if (states.limits.length > 0 || held.limits.length > 0) return null
  const isFromFlat = !isMoreThanOneState(states) && held.byLeaf.every((pull) => pull === null)
  const lives = { demand, testedLives: isFromFlat ? livesFor(testedLives, design.materials) : [] }
  const { section } = applyOwnTests(bend, built, lives, fold.leaves)
  const conductor = section.conductors.find(({ copper }) => copper.layer.id === governingLayerId)
  if (conductor === undefined) return null
  const inputs: NominalInputs = { bend, section, heldOver, demand }
  const subject = isFromFlat
    ? chooseSubject(bend, section, conductor, demand)
    : chooseLoadedSubject(inputs, governingLayerId)
  if (subject === null) return null
  const at = isFromFlat ? makeFindAt(subject, demand) : makeFindAtInFull(inputs, subject)
  const swings = listSwings(subject, at)
  const nominal = at(null, subject.radiusMm, subject.foil)
  if (swings === null || nominal === null) return null
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
    counted: isFromFlat
      ? null
      : describeCounted({
          states: describeStates(bend, states, fold.leaves, []),
          leafPull: held.leafPull,
        }),
    swings: swings.toSorted((a, b) => reach(b) - reach(a)),
  }
}

/** Strain and life of the copper that decides with one input moved. */
interface At {
  readonly strainPct: number
  readonly life: Quantity | null
}

/** Null where nobody can tell. */
type FindAt = (change: Change | null, radiusMm: number, foil: FatigueFoil) => At | null

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

/** The bend worked out in full with one input moved: its flatter end, fold before and loads as stated. */
function makeFindAtInFull(given: NominalInputs, subject: SwingSubject): FindAt {
  const inputs = withoutRanges(given)
  const { bendLayerId, leafIndex } = subject.conductor
  return (change, radiusMm, foil) => {
    const section = moveSection(inputs.section, change, subject, foil)
    const bend = { ...inputs.bend, insideRadiusMm: inputs.bend.insideRadiusMm + radiusMm - subject.radiusMm }
    const part = computeAtNominal({ ...inputs, bend, section })
      ?.flatMap(({ parts }) => parts)
      .find((each) => each.bendLayerId === bendLayerId && each.result.leafIndex === leafIndex)
    return part === undefined
      ? null
      : { strainPct: part.result.peakStrainPct, life: bend.use === 'dynamic' ? readRelationLife(part.result) : null }
  }
}

/** Null where a swing has an end at which nobody can tell. */
function listSwings(subject: SwingSubject, findAt: FindAt): Swing[] | null {
  const { layers, names, radiusMm, bend, foil, conductor } = subject
  const swings: Swing[] = []
  let isTold = true
  const add = (
    what: Pick<Swing, 'kind' | 'layerId' | 'layerName' | 'quantity' | 'low' | 'nominal' | 'high'>,
    at: (value: number) => At | null,
  ): void => {
    if (!(what.low < what.high)) return
    const low = at(what.low)
    const high = at(what.high)
    if (low === null || high === null) {
      isTold = false
      return
    }
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
  return isTold ? swings : null
}

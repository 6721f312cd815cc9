import { findAxisUm, stressGpa, stressIntegral, type YieldScale } from './bent-state'
import { type LayerConstant, withConstants } from './constants'
import { type BendLayer, isHeldSideways } from './layers'
import { isYieldBeyond, type Strip, stripsOf } from './strips'

/** A number that may move between two ends. */
type Movable =
  | { readonly kind: 'thickness'; readonly layerIndex: number }
  | { readonly kind: 'constant'; readonly layerIndex: number; readonly constant: LayerConstant }
  | { readonly kind: 'radius' }

export type Knob = Movable & { readonly low: number; readonly nominal: number; readonly high: number }

type ConstantKnob = Extract<Knob, { kind: 'constant' }>

/** Strain at one face, a fraction. */
export interface Extreme {
  nominal: number
  smallest: number
  largest: number
}

interface Search {
  readonly layers: readonly BendLayer[]
  readonly insideRadiusUm: number
  readonly yieldScale: YieldScale
  readonly knobs: readonly Knob[]
  /** Faces that are wanted, each as the number of layers inside it. */
  readonly faces: readonly number[]
  /** Those of them that are searched for; the others get the extremes seen on the way. */
  readonly searched: readonly number[]
}

/** Where each knob stands: at its low end, nominal, or its high end. */
type Setting = 0 | 1 | 2

/** Corners settle after two or three rounds; more would mean a tie that no longer matters. */
const MAX_ROUNDS = 6

/**
 * Extreme strain at each face when every knob may stand at either end: from nominal, each knob goes to the end that the derivative of the
 * face's strain points to, the axis is found again, and so on until none moves. Every corner that is met counts for every face.
 *
 * The derivatives follow from the balance of forces N(y0) = 0: with N_p the change of N with a knob at a fixed axis, the axis moves by
 * -N_p / N_y0, and eps = (y - y0) / (R + y0) falls with it; a layer inside the face also moves the face itself. One pass over the layers
 * gives all of them.
 */
export function findExtremes(search: Search): Extreme[] {
  const { faces, knobs } = search
  const state = new State(search)
  const nominal: Setting[] = knobs.map(() => 1)
  const start = state.bend(nominal, undefined)
  const extremes = faces.map((face) => {
    const strain = strainAt(start, face)
    return { nominal: strain, smallest: strain, largest: strain }
  })
  if (knobs.length === 0) return extremes
  const met = new Map<string, Bent>([[keyOf(nominal), start]])
  const visit = (settings: Setting[], near: Bent): Bent => {
    const key = keyOf(settings)
    const known = met.get(key)
    if (known !== undefined) return known
    const bent = state.bend(settings, near.axisUm)
    met.set(key, bent)
    for (let at = 0; at < extremes.length; at += 1) {
      const extreme = extremes[at]
      if (extreme === undefined) continue
      const strain = strainAt(bent, faces[at] ?? 0)
      if (strain < extreme.smallest) extreme.smallest = strain
      if (strain > extreme.largest) extreme.largest = strain
    }
    return bent
  }
  for (const face of search.searched) {
    for (const sign of [1, -1] as const) {
      let bent = start
      for (let round = 0; round < MAX_ROUNDS; round += 1) {
        const settings = state.point(bent, face, sign)
        if (settings === null) break
        bent = visit(settings, bent)
      }
    }
  }
  return extremes
}

/** A section bent with its knobs somewhere. */
interface Bent {
  readonly settings: readonly Setting[]
  readonly radiusUm: number
  readonly axisUm: number
  /** Depth of each face: index = layers inside it. */
  readonly depthUm: readonly number[]
  readonly strips: readonly (readonly Strip[])[]
  /** Change of the axial force with the axis' depth. */
  readonly slope: number
  /** Change of the axial force with each layer's thickness. */
  readonly thicknessSlope: readonly number[]
  /**
   * Sign of the fall of the axial force as each constant grows, in the order of the knobs; filled in when first asked for. The axis follows
   * the force, and the strain of every face falls with the axis: what constants do is the same for all faces.
   */
  constantGains: readonly number[] | null
}

/** One character for each knob, without a list of texts in between. */
const keyOf = (settings: readonly Setting[]): string => String.fromCharCode(...settings)

function strainAt({ depthUm, axisUm, radiusUm }: Bent, face: number): number {
  return ((depthUm[face] ?? Number.NaN) - axisUm) / (radiusUm + axisUm)
}

class State {
  private readonly stripsMet: Map<number, readonly Strip[]>[]
  private readonly knobsOfLayer: number[][]

  constructor(private readonly search: Search) {
    this.stripsMet = search.layers.map(() => new Map())
    this.knobsOfLayer = search.layers.map(() => [])
    for (const [at, knob] of search.knobs.entries()) {
      if (knob.kind === 'constant') this.knobsOfLayer[knob.layerIndex]?.push(at)
    }
  }

  /** @param startUm  the axis of a corner nearby */
  bend(settings: readonly Setting[], startUm: number | undefined): Bent {
    const { layers, knobs, yieldScale } = this.search
    const thicknessUm: number[] = []
    const strips: (readonly Strip[])[] = []
    for (let layerIndex = 0; layerIndex < layers.length; layerIndex += 1) {
      thicknessUm.push(layers[layerIndex]?.thicknessUm ?? 0)
      strips.push(this.stripsFor(layerIndex, settings))
    }
    let radiusUm = this.search.insideRadiusUm
    for (let at = 0; at < knobs.length; at += 1) {
      const knob = knobs[at]
      if (knob === undefined || knob.kind === 'constant') continue
      const value = knobValue(knob, settings[at] ?? 1)
      if (knob.kind === 'radius') radiusUm = value
      else thicknessUm[knob.layerIndex] = value
    }
    const axisUm = findAxisUm({ thicknessUm, strips }, { insideRadiusUm: radiusUm }, yieldScale, startUm)
    return this.differentiate(settings, radiusUm, axisUm, thicknessUm, strips)
  }

  /** Where each knob should stand to make the face's strain larger (sign 1) or smaller; null where all stand there already. */
  point(bent: Bent, face: number, sign: 1 | -1): Setting[] | null {
    const { slope, thicknessSlope, settings } = bent
    const strain = strainAt(bent, face)
    // d eps / d y0 times (R + y0) is -(1 + eps): R + y over R + y0.
    const fall = 1 + strain
    bent.constantGains ??= this.listConstantGains(bent)
    const next: Setting[] = []
    let isMoved = false
    const { knobs } = this.search
    for (let at = 0; at < knobs.length; at += 1) {
      const knob = knobs[at]
      let gain: number
      if (knob === undefined || knob.kind === 'radius') {
        gain = -strain
      } else if (knob.kind === 'thickness') {
        const axisShift = -(thicknessSlope[knob.layerIndex] ?? 0) / slope
        gain = (knob.layerIndex < face ? 1 : 0) - fall * axisShift
      } else {
        gain = bent.constantGains[at] ?? 0
      }
      const from = settings[at] ?? 1
      const setting = gain === 0 ? from : gain * sign > 0 ? 2 : 0
      if (setting !== from) isMoved = true
      next.push(setting)
    }
    return isMoved ? next : null
  }

  private listConstantGains({ settings, radiusUm, axisUm, depthUm, strips }: Bent): number[] {
    const gains: number[] = []
    const { knobs } = this.search
    for (let at = 0; at < knobs.length; at += 1) {
      const knob = knobs[at]
      if (knob?.kind !== 'constant') {
        gains.push(0)
        continue
      }
      const inner = ((depthUm[knob.layerIndex] ?? 0) - axisUm) / (radiusUm + axisUm)
      const outer = ((depthUm[knob.layerIndex + 1] ?? 0) - axisUm) / (radiusUm + axisUm)
      const change =
        knob.constant === 'coverageFraction'
          ? this.layerForce(this.stripsFor(knob.layerIndex, settings, at, 0), inner, outer) -
            this.layerForce(this.stripsFor(knob.layerIndex, settings, at, 2), inner, outer)
          : // A modulus or yield that grows raises stress the more the larger the strain: force follows the edge that strains more.
            Math.abs(inner) - Math.abs(outer)
      const largest = Math.max(Math.abs(inner), Math.abs(outer))
      gains.push(this.movesNothing(knob, settings[at] ?? 1, strips[knob.layerIndex] ?? [], largest) ? 0 : change)
    }
    return gains
  }

  /** A yield that no strain in the layer reaches, wherever it stands, and Poisson's ratio of what is free to contract. */
  private movesNothing(
    knob: ConstantKnob,
    setting: Setting,
    [strip]: readonly Strip[],
    largestStrain: number,
  ): boolean {
    const { yieldScale, layers } = this.search
    if (knob.constant === 'poisson') {
      const layer = layers[knob.layerIndex]
      return layer !== undefined && !isHeldSideways(layer)
    }
    if (strip === undefined) return true
    return isYieldBeyond(
      knob.constant,
      knob.low,
      { strip, value: knobValue(knob, setting) },
      largestStrain / yieldScale,
    )
  }

  private layerForce(strips: readonly Strip[], inner: number, outer: number): number {
    const { yieldScale } = this.search
    let force = 0
    for (const strip of strips) {
      force +=
        strip.widthFraction * (stressIntegral(strip, outer, yieldScale) - stressIntegral(strip, inner, yieldScale))
    }
    return force
  }

  private differentiate(
    settings: readonly Setting[],
    radiusUm: number,
    axisUm: number,
    thicknessUm: readonly number[],
    strips: readonly (readonly Strip[])[],
  ): Bent {
    const { yieldScale } = this.search
    const axisRadiusUm = radiusUm + axisUm
    const depthUm = [0]
    const atOuterEdge: number[] = []
    const acrossLayer: number[] = []
    let slope = 0
    let inUm = 0
    for (let at = 0; at < thicknessUm.length; at += 1) {
      const t = thicknessUm[at] ?? 0
      const inner = (inUm - axisUm) / axisRadiusUm
      inUm += t
      depthUm.push(inUm)
      const outer = (inUm - axisUm) / axisRadiusUm
      let innerStress = 0
      let outerStress = 0
      for (const strip of strips[at] ?? []) {
        innerStress += strip.widthFraction * stressGpa(strip, inner, yieldScale)
        outerStress += strip.widthFraction * stressGpa(strip, outer, yieldScale)
      }
      // Forces balance, so that their own part of the slope is 0 here.
      slope += innerStress * (1 + inner) - outerStress * (1 + outer)
      atOuterEdge.push(outerStress)
      acrossLayer.push(outerStress - innerStress)
    }
    // A layer that grows shifts all that lies outside it.
    const thicknessSlope = atOuterEdge.slice()
    let outside = 0
    for (let at = thicknessSlope.length - 1; at >= 0; at -= 1) {
      thicknessSlope[at] = (atOuterEdge[at] ?? 0) + outside
      outside += acrossLayer[at] ?? 0
    }
    return { settings, radiusUm, axisUm, depthUm, strips, slope, thicknessSlope, constantGains: null }
  }

  private stripsFor(
    layerIndex: number,
    settings: readonly Setting[],
    changedKnob = -1,
    changedSetting: Setting = 1,
  ): readonly Strip[] {
    const own = this.knobsOfLayer[layerIndex] ?? []
    let code = 0
    for (const at of own) code = 3 * code + (at === changedKnob ? changedSetting : (settings[at] ?? 1))
    const met = this.stripsMet[layerIndex]
    const known = met?.get(code)
    if (known !== undefined) return known
    const layer = this.search.layers[layerIndex]
    if (layer === undefined) throw new RangeError(`no layer ${layerIndex}`)
    const moved: { readonly constant: LayerConstant; readonly value: number }[] = []
    for (const at of own) {
      const knob = this.search.knobs[at]
      const setting = at === changedKnob ? changedSetting : (settings[at] ?? 1)
      if (knob?.kind === 'constant') moved.push({ constant: knob.constant, value: knobValue(knob, setting) })
    }
    const strips = stripsOf(moved.length === 0 ? layer : withConstants(layer, moved))
    met?.set(code, strips)
    return strips
  }
}

function knobValue({ low, nominal, high }: Knob, setting: Setting): number {
  return setting === 0 ? low : setting === 2 ? high : nominal
}

import { findAxisUm, stressGpa, stressIntegral, type YieldScale } from './bent-state'
import { type LayerConstant, withConstants } from './constants'
import type { BendLayer } from './layers'
import { type Strip, stripsOf } from './strips'

/** A number that may move between two ends. */
export type Movable =
  | { readonly kind: 'thickness'; readonly layerIndex: number }
  | { readonly kind: 'constant'; readonly layerIndex: number; readonly constant: LayerConstant }
  | { readonly kind: 'radius' }

export type Knob = Movable & { readonly low: number; readonly nominal: number; readonly high: number }

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
 * face's strain points to, the axis is found anew, and so on until none moves. Every corner that is met counts for every face.
 *
 * The derivatives follow from the balance of forces N(y0) = 0: with N_p the change of N with a knob at a fixed axis, the axis moves by
 * -N_p / N_y0, and eps = (y - y0) / (R + y0) falls with it; a layer inside the face also moves the face itself. One pass over the layers
 * gives all of them.
 */
export function findExtremes(search: Search): Extreme[] {
  const state = new State(search)
  const nominal: Setting[] = search.knobs.map(() => 1)
  const start = state.bend(nominal)
  const extremes = search.faces.map((face) => {
    const strain = strainAt(start, face)
    return { nominal: strain, smallest: strain, largest: strain }
  })
  if (search.knobs.length === 0) return extremes
  const met = new Map<string, Bent>([[nominal.join(''), start]])
  const visit = (settings: Setting[]): Bent => {
    const key = settings.join('')
    const known = met.get(key)
    if (known !== undefined) return known
    const bent = state.bend(settings)
    met.set(key, bent)
    search.faces.forEach((face, at) => {
      const extreme = extremes[at]
      if (extreme === undefined) return
      const strain = strainAt(bent, face)
      if (strain < extreme.smallest) extreme.smallest = strain
      if (strain > extreme.largest) extreme.largest = strain
    })
    return bent
  }
  for (const face of search.searched) {
    for (const sign of [1, -1] as const) {
      let settings = nominal
      let bent = start
      for (let round = 0; round < MAX_ROUNDS; round += 1) {
        const next = state.point(bent, settings, face, sign)
        if (next.every((each, at) => each === settings[at])) break
        settings = next
        bent = visit(settings)
      }
    }
  }
  return extremes
}

/** A section bent with its knobs somewhere. */
interface Bent {
  readonly radiusUm: number
  readonly axisUm: number
  /** Depth of each face: index = layers inside it. */
  readonly depthUm: readonly number[]
  readonly strips: readonly (readonly Strip[])[]
  /** Change of the axial force with the axis' depth. */
  readonly slope: number
  /** Change of the axial force with each layer's thickness. */
  readonly thicknessSlope: readonly number[]
  /** Fall of the axial force as each constant goes from its low to its high end, in the order of the knobs; filled in when first asked for. */
  constantGains: readonly number[] | null
}

function strainAt({ depthUm, axisUm, radiusUm }: Bent, face: number): number {
  return ((depthUm[face] ?? Number.NaN) - axisUm) / (radiusUm + axisUm)
}

class State {
  private readonly stripsMet: Map<number, readonly Strip[]>[]
  private readonly knobsOfLayer: number[][]

  constructor(private readonly search: Search) {
    this.stripsMet = search.layers.map(() => new Map())
    this.knobsOfLayer = search.layers.map(() => [])
    search.knobs.forEach((knob, at) => {
      if (knob.kind === 'constant') this.knobsOfLayer[knob.layerIndex]?.push(at)
    })
  }

  bend(settings: readonly Setting[]): Bent {
    const { layers, knobs, yieldScale } = this.search
    const thicknessUm = layers.map((layer) => layer.thicknessUm)
    let radiusUm = this.search.insideRadiusUm
    knobs.forEach((knob, at) => {
      if (knob.kind === 'constant') return
      const value = knobValue(knob, settings[at] ?? 1)
      if (knob.kind === 'radius') radiusUm = value
      else thicknessUm[knob.layerIndex] = value
    })
    const strips = layers.map((_, layerIndex) => this.stripsFor(layerIndex, settings))
    const axisUm = findAxisUm({ thicknessUm, strips }, { insideRadiusUm: radiusUm }, yieldScale)
    return this.differentiate(radiusUm, axisUm, thicknessUm, strips)
  }

  /** Where each knob should stand to make the face's strain larger (sign 1) or smaller. */
  point(bent: Bent, settings: readonly Setting[], face: number, sign: 1 | -1): Setting[] {
    const { slope, thicknessSlope } = bent
    const strain = strainAt(bent, face)
    // d eps / d y0 times (R + y0) is -(1 + eps): R + y over R + y0.
    const fall = 1 + strain
    // The axis follows the force, and the strain of every face falls with the axis: what constants do is the same for all faces.
    bent.constantGains ??= this.listConstantGains(bent, settings)
    const { constantGains } = bent
    return this.search.knobs.map((knob, at): Setting => {
      let gain: number
      if (knob.kind === 'radius') {
        gain = -strain
      } else if (knob.kind === 'thickness') {
        const axisShift = -(thicknessSlope[knob.layerIndex] ?? 0) / slope
        gain = (knob.layerIndex < face ? 1 : 0) - fall * axisShift
      } else {
        gain = constantGains[at] ?? 0
      }
      if (gain === 0) return settings[at] ?? 1
      return gain * sign > 0 ? 2 : 0
    })
  }

  private listConstantGains({ radiusUm, axisUm, depthUm }: Bent, settings: readonly Setting[]): number[] {
    return this.search.knobs.map((knob, at) => {
      if (knob.kind !== 'constant') return 0
      const innerUm = depthUm[knob.layerIndex] ?? 0
      const outerUm = depthUm[knob.layerIndex + 1] ?? 0
      const forceWith = (setting: Setting): number =>
        this.layerForce(this.stripsFor(knob.layerIndex, settings, at, setting), innerUm, outerUm, axisUm, radiusUm)
      return forceWith(0) - forceWith(2)
    })
  }

  private layerForce(
    strips: readonly Strip[],
    innerUm: number,
    outerUm: number,
    axisUm: number,
    radiusUm: number,
  ): number {
    const inner = (innerUm - axisUm) / (radiusUm + axisUm)
    const outer = (outerUm - axisUm) / (radiusUm + axisUm)
    let force = 0
    for (const strip of strips) {
      const { yieldScale } = this.search
      force +=
        strip.widthFraction * (stressIntegral(strip, outer, yieldScale) - stressIntegral(strip, inner, yieldScale))
    }
    return force
  }

  private differentiate(
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
    thicknessUm.forEach((t, at) => {
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
    })
    // A layer that grows shifts all that lies outside it.
    const thicknessSlope = atOuterEdge.slice()
    let outside = 0
    for (let at = thicknessSlope.length - 1; at >= 0; at -= 1) {
      thicknessSlope[at] = (atOuterEdge[at] ?? 0) + outside
      outside += acrossLayer[at] ?? 0
    }
    return { radiusUm, axisUm, depthUm, strips, slope, thicknessSlope, constantGains: null }
  }

  private stripsFor(
    layerIndex: number,
    settings: readonly Setting[],
    changedKnob = -1,
    changedSetting: Setting = 1,
  ): readonly Strip[] {
    const own = this.knobsOfLayer[layerIndex] ?? []
    const settingOf = (at: number): Setting => (at === changedKnob ? changedSetting : (settings[at] ?? 1))
    let code = 0
    for (const at of own) code = 3 * code + settingOf(at)
    const met = this.stripsMet[layerIndex]
    const known = met?.get(code)
    if (known !== undefined) return known
    const layer = this.search.layers[layerIndex]
    if (layer === undefined) throw new RangeError(`no layer ${layerIndex}`)
    const moved = own.flatMap((at) => {
      const knob = this.search.knobs[at]
      return knob?.kind === 'constant' ? [{ constant: knob.constant, value: knobValue(knob, settingOf(at)) }] : []
    })
    const strips = stripsOf(moved.length === 0 ? layer : withConstants(layer, moved))
    met?.set(code, strips)
    return strips
  }
}

function knobValue({ low, nominal, high }: Knob, setting: Setting): number {
  return setting === 0 ? low : setting === 2 ? high : nominal
}

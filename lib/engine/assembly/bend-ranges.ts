import { computeSection, type Leaf, momentNPerMmWidth, type TolerancedLayer } from '../bending'
import type { Bend } from '../design'
import { findRange, type Span } from '../numerics'
import type { QuantityRange } from '../results'
import { computeHandbook, type LeafForRules } from './bend-rules'
import type { BendSection, LeafSection } from './bend-section'

const RAD_PER_DEG = Math.PI / 180

const spanOf = ({ thicknessUm, minusUm, plusUm }: TolerancedLayer): Span => ({
  low: thicknessUm - minusUm,
  nominal: thicknessUm,
  high: thicknessUm + plusUm,
})

/** Layers of a leaf as numbers: thicknesses may move, the elastic moduli are those of the section. */
interface Stack {
  readonly spans: readonly Span[]
  readonly moduliGpa: readonly number[]
}

function readStack(leaf: Leaf, { layers }: LeafSection): Stack {
  return {
    spans: layers.map(spanOf),
    moduliGpa: leaf.section.layers.map(({ effectiveModulusGpa }) => effectiveModulusGpa),
  }
}

/** Axis and rigidity of a stack, about its own axis, um and GPa um^3. */
function bendStack(moduliGpa: readonly number[], thicknessUm: readonly number[]) {
  let depthUm = 0
  let stretching = 0
  let first = 0
  let second = 0
  for (const [at, modulusGpa] of moduliGpa.entries()) {
    const t = thicknessUm[at] ?? 0
    const middleUm = depthUm + t / 2
    stretching += modulusGpa * t
    first += modulusGpa * t * middleUm
    second += modulusGpa * t * (middleUm ** 2 + t ** 2 / 12)
    depthUm += t
  }
  const axisUm = first / stretching
  return { axisUm, depthUm, rigidity: second - stretching * axisUm ** 2 }
}

/**
 * How far the middle of a conductor lies from its leaf's elastic axis, as a share of the thickness, over the tolerances.
 *
 * @param bendLayerIds  its foil, and its plating where it has one
 */
export function findAxisOffsetRange(
  leaf: Leaf,
  section: LeafSection,
  bendLayerIds: ReadonlySet<string>,
): QuantityRange {
  const { spans, moduliGpa } = readStack(leaf, section)
  const first = section.layers.findIndex(({ id }) => bendLayerIds.has(id))
  const last = section.layers.findLastIndex(({ id }) => bendLayerIds.has(id))
  return findRange(spans, (thicknessUm) => {
    const { axisUm, depthUm } = bendStack(moduliGpa, thicknessUm)
    let insideUm = 0
    let ownUm = 0
    for (let at = 0; at <= last; at += 1) {
      if (at < first) insideUm += thicknessUm[at] ?? 0
      else ownUm += thicknessUm[at] ?? 0
    }
    return Math.abs(insideUm + ownUm / 2 - axisUm) / depthUm
  })
}

/**
 * Share of a bend's stiffness that its shield films bring, 0 to 1, and its range over the tolerances; null without a shield.
 *
 * Model   while nothing yields D_i = E'_i t_i ((y_i - y_n)^2 + t_i^2 / 12) about the axis of the leaf that holds the film, over the sum of
 *         the leaves' rigidities; as formed, the moment of the films over that of the leaves. Copper past yield holds less, so that a film
 *         counts for more: the greater of both is taken. How far yield moves the share is taken from nominal.
 * Source  SOURCES.compositeBeam, SOURCES.plasticBending
 */
export function computeShieldShare(
  leaves: readonly Leaf[],
  { leaves: sections }: BendSection,
): { readonly nominal: number; readonly range: QuantityRange } | null {
  const stacks = leaves.flatMap((leaf, at) => {
    const section = sections[at]
    return section === undefined
      ? []
      : [{ ...readStack(leaf, section), isShield: section.sources.map(({ layer }) => layer.kind === 'shield-film') }]
  })
  if (!stacks.some(({ isShield }) => isShield.includes(true))) return null
  const spans = stacks.flatMap((stack) => stack.spans)
  const share = (values: readonly number[]): number => {
    let from = 0
    let shieldRigidity = 0
    let rigidity = 0
    for (const { moduliGpa, isShield } of stacks) {
      const thicknessUm = values.slice(from, from + moduliGpa.length)
      from += moduliGpa.length
      const bent = bendStack(moduliGpa, thicknessUm)
      rigidity += bent.rigidity
      let depthUm = 0
      for (const [at, t] of thicknessUm.entries()) {
        const armUm = depthUm + t / 2 - bent.axisUm
        if (isShield[at] === true) shieldRigidity += (moduliGpa[at] ?? 0) * t * (armUm ** 2 + t ** 2 / 12)
        depthUm += t
      }
    }
    return rigidity > 0 ? Math.min(1, shieldRigidity / rigidity) : 0
  }
  const elastic = share(spans.map(({ nominal }) => nominal))
  const range = findRange(spans, share)
  const moved = Math.max(0, findFormedShieldShare(leaves, sections) - elastic)
  return {
    nominal: elastic + moved,
    range: { low: Math.min(1, range.low + moved), high: Math.min(1, range.high + moved) },
  }
}

function findFormedShieldShare(leaves: readonly Leaf[], sections: readonly LeafSection[]): number {
  let shieldMoment = 0
  let moment = 0
  for (const [at, { section, strain }] of leaves.entries()) {
    const { stack } = section
    const curvaturePerUm = strain.curvaturePerMm / 1000
    const strips = stack.strips.map((each, layerAt) =>
      sections[at]?.sources[layerAt]?.layer.kind === 'shield-film' ? each : [],
    )
    moment += momentNPerMmWidth(stack, strain.axisUm, curvaturePerUm)
    shieldMoment += momentNPerMmWidth({ ...stack, strips }, strain.axisUm, curvaturePerUm)
  }
  return moment > 0 ? shieldMoment / moment : 0
}

/**
 * Greatest difference in developed length between leaves over the thickness tolerances; gaps are as stated. How far copper past yield moves
 * the axes is taken from nominal.
 */
export function findLeafLengthRange(
  leaves: readonly Leaf[],
  { leaves: sections, gapsUm }: BendSection,
  { angleDeg }: Bend,
): QuantityRange {
  if (leaves.length < 2) return { low: 0, high: 0 }
  const stacks = leaves.flatMap((leaf, at) => {
    const section = sections[at]
    return section === undefined ? [] : [readStack(leaf, section)]
  })
  const [inner, outer] = [leaves[0], leaves.at(-1)]
  const shiftOf = (leaf: Leaf | undefined) => (leaf === undefined ? 0 : leaf.strain.axisUm - leaf.section.neutralAxisUm)
  const shiftUm = shiftOf(outer) - shiftOf(inner)
  return findRange(
    stacks.flatMap(({ spans }) => spans),
    (values) => {
      let from = 0
      let depthUm = 0
      const axesUm = stacks.map(({ moduliGpa }, at) => {
        const bent = bendStack(moduliGpa, values.slice(from, from + moduliGpa.length))
        from += moduliGpa.length
        const axisUm = depthUm + bent.axisUm
        depthUm += bent.depthUm + (gapsUm[at] ?? 0)
        return axisUm
      })
      return (angleDeg * RAD_PER_DEG * ((axesUm.at(-1) ?? 0) - (axesUm[0] ?? 0) + shiftUm)) / 1000
    },
  )
}

/**
 * Handbook radius over the thickness tolerances. The formula is linear in what lies inside the innermost copper, from there to the
 * outermost, and outside it, so that its ends are among the eight corners of these three.
 */
export function findHandbookRange(
  bend: Bend,
  leaves: readonly LeafForRules[],
  { leaves: sections }: BendSection,
): QuantityRange | null {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let corner = 0; corner < 8; corner += 1) {
    const { minRadiusMm } = computeHandbook(
      bend,
      leaves.map((leaf, at) => moveLeaf(leaf, sections[at], corner)),
    )
    if (minRadiusMm === null) return null
    low = Math.min(low, minRadiusMm)
    high = Math.max(high, minRadiusMm)
  }
  return { low, high }
}

function moveLeaf(leaf: LeafForRules, section: LeafSection | undefined, corner: number): LeafForRules {
  if (section === undefined || leaf.conductors.length === 0) return leaf
  const copper = section.layers.flatMap(({ conductor }, at) => (conductor === undefined ? [] : [at]))
  const first = copper[0] ?? 0
  const last = copper.at(-1) ?? 0
  const layers = section.layers.map((layer, at) => {
    const part = at < first ? 0 : at <= last ? 1 : 2
    const { low, high } = spanOf(layer)
    return { ...layer, thicknessUm: (corner >> part) % 2 === 0 ? low : high }
  })
  return { ...leaf, section: computeSection(layers) }
}

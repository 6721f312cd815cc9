import { type Leaf, momentNPerMmWidth } from '../bending'
import type { Bend } from '../design'
import { findRange } from '../numerics'
import type { QuantityRange } from '../results'
import { computeHandbook, type LeafForHandbook } from './bend-rules'
import type { BendSection, LeafSection } from './bend-section'
import { bendStack, type ElasticStack, readElasticStack, spanOfThickness } from './elastic-stack'

const RAD_PER_DEG = Math.PI / 180

/**
 * Share of a bend's stiffness that its shield films bring, 0 to 1, and its range over tolerances and constants; null without a shield.
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
  if (!sections.some(({ sources }) => sources.some(({ layer }) => layer.kind === 'shield-film'))) return null
  const stacks = leaves.flatMap((leaf, at) => {
    const section = sections[at]
    return section === undefined
      ? []
      : [
          {
            ...readElasticStack(leaf, section),
            isShield: section.sources.map(({ layer }) => layer.kind === 'shield-film'),
          },
        ]
  })
  const spans = listSpans(stacks)
  const share = (values: readonly number[]): number => {
    let shieldRigidity = 0
    let rigidity = 0
    for (const [at, { thicknessUm, modulusGpa }] of splitValues(values, stacks).entries()) {
      const isShield = stacks[at]?.isShield ?? []
      const bent = bendStack(modulusGpa, thicknessUm)
      rigidity += bent.rigidity
      let depthUm = 0
      for (const [layer, t] of thicknessUm.entries()) {
        const armUm = depthUm + t / 2 - bent.axisUm
        if (isShield[layer] === true) shieldRigidity += (modulusGpa[layer] ?? 0) * t * (armUm ** 2 + t ** 2 / 12)
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

const listSpans = (stacks: readonly ElasticStack[]) =>
  stacks.flatMap(({ thicknessUm, modulusGpa }) => [...thicknessUm, ...modulusGpa])

/** Values in the order of `listSpans`, stack by stack. */
function splitValues(values: readonly number[], stacks: readonly ElasticStack[]) {
  let from = 0
  const take = (count: number): readonly number[] => {
    from += count
    return values.slice(from - count, from)
  }
  return stacks.map(({ thicknessUm, modulusGpa }) => ({
    thicknessUm: take(thicknessUm.length),
    modulusGpa: take(modulusGpa.length),
  }))
}

/**
 * Greatest difference in developed length between leaves over thickness tolerances and the spread of moduli; gaps are as stated. How far copper past yield moves
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
    return section === undefined ? [] : [readElasticStack(leaf, section)]
  })
  const [inner, outer] = [leaves[0], leaves.at(-1)]
  const shiftOf = (leaf: Leaf | undefined) => (leaf === undefined ? 0 : leaf.strain.axisUm - leaf.section.neutralAxisUm)
  const shiftUm = shiftOf(outer) - shiftOf(inner)
  return findRange(listSpans(stacks), (values) => {
    let depthUm = 0
    const axesUm = splitValues(values, stacks).map(({ thicknessUm, modulusGpa }, at) => {
      const bent = bendStack(modulusGpa, thicknessUm)
      const axisUm = depthUm + bent.axisUm
      depthUm += bent.depthUm + (gapsUm[at] ?? 0)
      return axisUm
    })
    return (angleDeg * RAD_PER_DEG * ((axesUm.at(-1) ?? 0) - (axesUm[0] ?? 0) + shiftUm)) / 1000
  })
}

/**
 * Handbook radius over the thickness tolerances. The formula is linear in what lies inside the innermost copper, from there to the
 * outermost, and outside it, so that its ends are among the eight corners of these three.
 */
export function findHandbookRange(
  bend: Bend,
  leaves: readonly LeafForHandbook[],
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

function moveLeaf(leaf: LeafForHandbook, section: LeafSection | undefined, corner: number): LeafForHandbook {
  if (section === undefined || leaf.conductors.length === 0) return leaf
  const first = section.layers.findIndex(({ conductor }) => conductor !== undefined)
  const last = section.layers.findLastIndex(({ conductor }) => conductor !== undefined)
  let totalThicknessUm = 0
  const layers = section.layers.map((layer, at) => {
    const part = at < first ? 0 : at <= last ? 1 : 2
    const { low, high } = spanOfThickness(layer)
    const innerDepthUm = totalThicknessUm
    totalThicknessUm += (corner >> part) % 2 === 0 ? low : high
    return { id: layer.id, innerDepthUm, outerDepthUm: totalThicknessUm }
  })
  return { ...leaf, section: { layers, totalThicknessUm } }
}

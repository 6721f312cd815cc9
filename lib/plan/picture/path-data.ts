import { makeArc } from '@/lib/geometry'
import type { PlanNode } from '../document/path-schema'
import { NM_PER_MM } from '../document/primitives'
import { toNm } from '../document/to-geometry'

/**
 * A path in the words of SVG (`d`), in mm with y pointing down, arcs exact. A way through a point that makes no arc, as it may stand while
 * somebody draws, is straight.
 */
export function pathData(nodes: readonly PlanNode[], isClosed: boolean): string {
  const [first] = nodes
  if (first === undefined) return ''
  const steps = nodes.map((node, at) => {
    const next = nodes[at + 1] ?? (isClosed ? first : undefined)
    return next === undefined ? '' : stepTo(node, next)
  })
  return `M${write(first.atMm)}${steps.join('')}${isClosed ? 'Z' : ''}`
}

const write = ([x, y]: readonly [number, number]) => `${digits(x)} ${digits(-y)}`

/** Whole nanometres in mm: JavaScript writes these without a power of ten, which is legal in SVG and read wrongly by some. */
const digits = (mm: number): string => String(Math.round(mm * NM_PER_MM) / NM_PER_MM + 0)

function stepTo({ atMm, viaMm }: PlanNode, next: PlanNode): string {
  const arc = viaMm === null ? null : makeArc(toNm(atMm), toNm(viaMm), toNm(next.atMm))
  if (arc === null) return `L${write(next.atMm)}`
  const radius = digits(arc.radiusNm / 1e6)
  // Counter-clockwise with y up is against the clock on screen too, which SVG calls sweep 0.
  return `A${radius} ${radius} 0 ${Math.abs(arc.sweepRad) > Math.PI + 1e-6 ? 1 : 0} ${arc.sweepRad > 0 ? 0 : 1} ${write(next.atMm)}`
}

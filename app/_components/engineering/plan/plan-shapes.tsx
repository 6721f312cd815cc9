'use client'

import { memo } from 'react'
import type { Design, Plan } from '@/lib/engine'
import type { LineOrArc } from '@/lib/geometry'
import type { PointMm } from '@/lib/plan'
import { type DrawnRef, fieldsOf, handlesOf, isClosedList, nodesOf, type PlanListKey } from '@/lib/plan/edit'
import { placesOfHole } from '@/lib/plan/exchange'
import { pathData } from '@/lib/plan/picture'
import { PlanWords } from './plan-words'
import type { MeasuredPlan } from './use-measured-plan'

/** The static layer: it is painted again only where something of it changed. */

interface ShapesProps {
  readonly plan: Plan
  readonly design: Design
  readonly measured: MeasuredPlan
  readonly hidden: ReadonlySet<PlanListKey | 'outline'>
  readonly mmPerPx: number
}

/** Colours of zones: their names are written besides. */
const TONES = 6

type Nodes = NonNullable<Plan['outline']>
type Edges = readonly LineOrArc[]

/** Edges of a region as the nodes of one loop. */
const toNodes = (edges: Edges): Nodes =>
  edges.map((edge) => ({
    atMm: [edge.from[0] / 1e6, edge.from[1] / 1e6],
    viaMm: edge.kind === 'arc' ? [edge.through[0] / 1e6, edge.through[1] / 1e6] : null,
  }))

export const PlanShapes = memo(function PlanShapes({ plan, design, measured, hidden, mmPerPx }: ShapesProps) {
  const isShown = (list: PlanListKey) => !hidden.has(list)
  const zones = design.construction.zones
  return (
    <>
      {isShown('areas') && <AreaShapes measured={measured} zones={zones} />}
      {plan.outline !== null && <Shape nodes={plan.outline} isClosed className="plan-outline" />}
      {isShown('cutOuts') &&
        plan.cutOuts.map((each) => <Shape key={each.id} nodes={each.nodes} isClosed className="plan-cut-out" />)}
      {isShown('stiffeners') &&
        plan.stiffeners.map((each) => (
          <Shape key={each.id} nodes={each.nodes} isClosed className="plan-stiffener" fill="url(#plan-hatch)" />
        ))}
      {isShown('coverlayOpenings') &&
        plan.coverlayOpenings.map((each) => (
          <Shape key={each.id} nodes={each.nodes} isClosed className="plan-opening" />
        ))}
      {isShown('components') &&
        plan.components.map((each) => <Shape key={each.id} nodes={each.nodes} isClosed className="plan-component" />)}
      {isShown('dividingLines') &&
        plan.dividingLines.map((each) => (
          <Shape key={each.id} nodes={each.nodes} isClosed={false} className="plan-dividing" />
        ))}
      {isShown('routes') &&
        plan.routes.map((each) => <Shape key={each.id} nodes={each.nodes} isClosed={false} className="plan-route" />)}
      {isShown('slits') &&
        plan.slits.map((each) => <Shape key={each.id} nodes={each.nodes} isClosed={false} className="plan-slit" />)}
      {isShown('bendLines') && <Bands measured={measured} />}
      {isShown('bendLines') &&
        plan.bendLines.map(({ id, fromMm, toMm }) => (
          <line key={id} x1={fromMm[0]} y1={-fromMm[1]} x2={toMm[0]} y2={-toMm[1]} className="plan-bend" />
        ))}
      {isShown('connectorEnds') &&
        plan.connectorEnds.map(({ id, fromMm, toMm }) => (
          <line key={id} x1={fromMm[0]} y1={-fromMm[1]} x2={toMm[0]} y2={-toMm[1]} className="plan-connector" />
        ))}
      {isShown('holes') && <Holes plan={plan} design={design} />}
      {isShown('pads') &&
        plan.pads.map(({ id, atMm }) => (
          <path key={id} d={`M${atMm[0]} ${-atMm[1]}h0`} className="plan-dot" strokeLinecap="round" />
        ))}
      <PlanWords plan={plan} hidden={hidden} mmPerPx={mmPerPx} />
      {isShown('areas') && (
        <g className="plan-words" fontSize={13 * mmPerPx}>
          {measured.areas.map(({ innerMm, name, zoneId }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: an area has no identity but its place in the list.
            <text key={index} x={innerMm[0]} y={-innerMm[1]} textAnchor="middle">
              {zones.find(({ id }) => id === zoneId)?.name ?? name ?? 'no zone'}
            </text>
          ))}
        </g>
      )}
    </>
  )
})

interface ShapeProps {
  readonly nodes: Nodes
  readonly isClosed: boolean
  readonly className: string
  readonly fill?: string
}

const Shape = memo(function Shape({ nodes, isClosed, className, fill }: ShapeProps) {
  return <path d={pathData(nodes, isClosed)} className={className} fill={fill} />
})

const AreaShapes = memo(function AreaShapes({
  measured,
  zones,
}: {
  measured: MeasuredPlan
  zones: Design['construction']['zones']
}) {
  return measured.areas.map(({ region, zoneId }, index) => {
    const zone = zones.findIndex(({ id }) => id === zoneId)
    const loops = [region.outer, ...region.holes].map((edges) => pathData(toNodes(edges), true))
    return (
      <path
        // biome-ignore lint/suspicious/noArrayIndexKey: an area has no identity but its place in the list.
        key={index}
        d={loops.join('')}
        fillRule="evenodd"
        className="plan-area"
        data-tone={zone < 0 ? 'none' : zone % TONES}
      />
    )
  })
})

/** The band that each bend covers, as far as its section is known. */
const Bands = memo(function Bands({ measured }: { measured: MeasuredPlan }) {
  return measured.measures?.bands.map(({ id, region }) =>
    region === null ? null : <path key={id} d={pathData(toNodes(region.outer), true)} className="plan-band" />,
  )
})

const Holes = memo(function Holes({ plan, design }: { plan: Plan; design: Design }) {
  return plan.holes.map((hole) => {
    const drillMm = design.features.holes.find(({ id }) => id === hole.holeId)?.drillMm ?? null
    return (
      <g key={hole.id}>
        {placesOfHole(hole).map(([x, y]) =>
          drillMm === null ? (
            <path key={`${x} ${y}`} d={`M${x} ${-y}h0`} className="plan-dot" strokeLinecap="round" />
          ) : (
            <circle key={`${x} ${y}`} cx={x} cy={-y} r={drillMm / 2} className="plan-hole" />
          ),
        )}
      </g>
    )
  })
})

/** What is chosen, drawn over the others, with its points. */
export function shapeOf(plan: Plan, ref: DrawnRef): { readonly d: string; readonly points: readonly PointMm[] } {
  const fields = fieldsOf(plan, ref) ?? {}
  const points = handlesOf(fields).map(({ atMm }) => atMm)
  const nodes = nodesOf(fields)
  const way = points.map(([x, y]) => `${x} ${-y}`)
  if (nodes !== null) return { d: pathData(nodes, isClosedList(ref.list)), points }
  return { d: way.length === 1 ? `M${way[0]}h0` : `M${way.slice(0, 2).join('L')}`, points }
}

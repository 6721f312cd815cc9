import { type PointMm, pixelOf, type SizePx, type View } from '@/lib/artwork-picture'
import type { PlacedFinding, PlanShapes } from './picture-types'

interface PictureOverlayProps {
  readonly view: View
  readonly size: SizePx
  /** Null where the plan is switched off, or the artwork lies on none. */
  readonly plan: PlanShapes | null
  readonly findings: readonly PlacedFinding[]
  readonly chosen: number | null
  readonly threads: readonly { readonly id: string; readonly atMm: PointMm }[]
  readonly mark: PointMm | null
  readonly measured: readonly PointMm[]
}

/** Bends nearer together than this on screen go without their names. */
const LEAST_NAMED_PX = 24

/** What lies over the layers: the plan's lines, findings, threads, the marked place and the measure. In pixels, so that type and marks keep their size. */
export function PictureOverlay({ view, size, plan, findings, chosen, threads, mark, measured }: PictureOverlayProps) {
  const at = (place: PointMm) => pixelOf(view, size, place)
  const [from, to] = measured.map(at)
  return (
    <svg className="artwork-overlay" viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true">
      {plan !== null && <PlanLines plan={plan} view={view} size={size} />}
      {threads.map(({ id, atMm }) => {
        const [x, y] = at(atMm)
        return <rect key={id} className="artwork-thread" x={x - 5} y={y - 5} width={10} height={10} />
      })}
      {findings.map(({ key, number, verdict, atMm }) => {
        const [x, y] = at(atMm)
        if (x < -20 || y < -20 || x > size.width + 20 || y > size.height + 20) return null
        return (
          <g key={key} className="artwork-finding" data-verdict={verdict} data-chosen={number === chosen || undefined}>
            <circle cx={x} cy={y} r={number === chosen ? 11 : 5} />
            <text x={x + (number === chosen ? 14 : 8)} y={y - 6}>
              {number}
            </text>
          </g>
        )
      })}
      {mark !== null && <Cross at={at(mark)} />}
      {measured.map((place, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two ends of one measure have no identity but their order.
        <Cross key={index} at={at(place)} />
      ))}
      {from !== undefined && to !== undefined && (
        <line className="artwork-measure" x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />
      )}
    </svg>
  )
}

function Cross({ at: [x, y] }: { at: readonly [number, number] }) {
  return <path className="artwork-cross" d={`M${x - 9} ${y}H${x + 9}M${x} ${y - 9}V${y + 9}`} />
}

function PlanLines({ plan, view, size }: { plan: PlanShapes; view: View; size: SizePx }) {
  const [left, top] = pixelOf(view, size, [0, 0])
  const scale = 1 / view.mmPerPx
  const transform = `matrix(${view.isFromBelow ? -scale : scale} 0 0 ${-scale} ${left} ${top})`
  return (
    <>
      <g transform={transform}>
        {plan.zones.map(({ id, rings }) => (
          <path key={id} className="artwork-zone" d={pathOf(rings)} />
        ))}
        {plan.bends.map(({ id, rings, fromMm, toMm }) => (
          <g key={id}>
            <path className="artwork-bend" d={pathOf(rings)} />
            <path className="artwork-axis" d={`M${fromMm.join(' ')}L${toMm.join(' ')}`} />
          </g>
        ))}
        <path className="artwork-outline" d={pathOf(plan.part)} />
      </g>
      {plan.bends.map(({ id, name, fromMm, toMm }) => {
        const [[ax, ay], [bx, by]] = [pixelOf(view, size, fromMm), pixelOf(view, size, toMm)]
        if (Math.hypot(bx - ax, by - ay) < LEAST_NAMED_PX) return null
        // At the upper end of the axis, where least else is drawn.
        const [x, y] = ay < by ? [ax, ay] : [bx, by]
        return (
          <text key={id} className="artwork-name" x={x} y={Math.max(12, y - 5)} textAnchor="middle">
            {name}
          </text>
        )
      })}
    </>
  )
}

function pathOf(rings: readonly (readonly number[])[]): string {
  const parts: string[] = []
  for (const ring of rings) {
    for (let at = 0; at + 1 < ring.length; at += 2) parts.push(`${at === 0 ? 'M' : 'L'}${ring[at]} ${ring[at + 1]}`)
    parts.push('Z')
  }
  return parts.join('')
}

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

/** Axes shorter than this on screen, and names that would lie on another, go without. */
const [LEAST_NAMED_PX, NAME_HEIGHT_PX, LETTER_PX] = [24, 18, 8]
/** Findings nearer than this share a mark, on which so many numbers fit. */
const [SPOT_PX, MOST_ON_MARK] = [12, 3]

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
      {gatherMarks(findings, chosen, at, size).map(({ key, x, y, verdict, label, isChosen }) => (
        <g key={key} className="artwork-finding" data-verdict={verdict} data-chosen={isChosen || undefined}>
          <circle cx={x} cy={y} r={isChosen ? 11 : 5} />
          <text x={x + (isChosen ? 14 : 8)} y={y - 6}>
            {label}
          </text>
        </g>
      ))}
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

interface FindingMark {
  readonly key: string
  readonly x: number
  readonly y: number
  readonly verdict: PlacedFinding['verdict']
  readonly label: string
  readonly isChosen: boolean
}

/** Findings in sight; those on one spot share a mark, in the colour of the worst, which stands first in the list. */
function gatherMarks(
  findings: readonly PlacedFinding[],
  chosen: number | null,
  at: (place: PointMm) => readonly [number, number],
  { width, height }: SizePx,
): FindingMark[] {
  const groups: { x: number; y: number; found: PlacedFinding[] }[] = []
  for (const finding of findings) {
    const [x, y] = at(finding.atMm)
    if (x < -SPOT_PX || y < -SPOT_PX || x > width + SPOT_PX || y > height + SPOT_PX) continue
    const near = groups.find((group) => Math.hypot(group.x - x, group.y - y) < SPOT_PX)
    if (near === undefined) groups.push({ x, y, found: [finding] })
    else near.found.push(finding)
  }
  return groups.flatMap(({ x, y, found }) => {
    const [first] = found
    if (first === undefined) return []
    const numbers = found.map(({ number }) => number)
    const shown = numbers.length > MOST_ON_MARK ? [...numbers.slice(0, MOST_ON_MARK), '…'] : numbers
    const { key, verdict } = first
    const isChosen = chosen !== null && numbers.includes(chosen)
    return [{ key, x, y, verdict, label: shown.join(', '), isChosen }]
  })
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
      {placeNames(plan.bends, view, size).map(({ id, name, x, y }) => (
        <text key={id} className="artwork-name" x={x} y={y} textAnchor="middle">
          {name}
        </text>
      ))}
    </>
  )
}

/** At the upper end of each axis, where least else is drawn. */
function placeNames(bends: PlanShapes['bends'], view: View, size: SizePx) {
  const placed: { id: string; name: string; x: number; y: number }[] = []
  for (const { id, name, fromMm, toMm } of bends) {
    const [[ax, ay], [bx, by]] = [pixelOf(view, size, fromMm), pixelOf(view, size, toMm)]
    if (Math.hypot(bx - ax, by - ay) < LEAST_NAMED_PX) continue
    const [x, upper] = ay < by ? [ax, ay] : [bx, by]
    const y = Math.max(NAME_HEIGHT_PX, upper - 5)
    const isFree = placed.every(
      (other) =>
        Math.abs(other.y - y) > 2 * NAME_HEIGHT_PX ||
        Math.abs(other.x - x) > (LETTER_PX * (name.length + other.name.length)) / 2,
    )
    if (isFree) placed.push({ id, name, x, y })
  }
  return placed
}

function pathOf(rings: readonly (readonly number[])[]): string {
  const parts: string[] = []
  for (const ring of rings) {
    for (let at = 0; at + 1 < ring.length; at += 2) parts.push(`${at === 0 ? 'M' : 'L'}${ring[at]} ${ring[at + 1]}`)
    parts.push('Z')
  }
  return parts.join('')
}

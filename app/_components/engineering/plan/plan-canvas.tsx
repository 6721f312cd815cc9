'use client'

import { type PointerEvent, useEffect, useMemo, useRef, useState, type WheelEvent } from 'react'
import { Button } from '@/app/_components/ui/button'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import type { Plan } from '@/lib/engine'
import { digitsOfResultLength, getShownUnit, getUnitSymbol } from '@/lib/engine/units'
import type { PointMm } from '@/lib/plan'
import type { PlanEdit } from '@/lib/plan/edit'
import { type Hit, hitsAt, type Snap, snapAt } from '@/lib/plan/pick'
import { useDraft } from '../draft'
import { useWidth } from '../pictures'
import { withoutFaces } from './faces'
import { listFindings, type Pin, pinFindings } from './findings'
import { isSameRef } from './plan-list'
import { PlanShapes, shapeOf } from './plan-shapes'
import type { MeasuredPlan } from './use-measured-plan'
import type { PlanEditor } from './use-plan-editor'
import { fitView, type SizePx, toPlan, type View, viewBoxOf, zoomBy } from './view'

const HEIGHT_PX = 440
/** How near counts, on screen: half of the least target that a finger can meet (WCAG 2.2, 2.5.8). */
const REACH_PX = 12
/** A press that moves less than this is a click. */
const STILL_PX = 4

interface Press {
  readonly pointerId: number
  readonly startPx: readonly [number, number]
  readonly startMm: PointMm
  readonly hit: Hit | null
  readonly base: Plan
  readonly view: View
  kind: 'still' | 'move' | 'pan'
}

/** The drawing: what is drawn, what is being drawn, and what is chosen, in three layers. The list beside it holds the same. */
export function PlanCanvas({ editor, measured }: { editor: PlanEditor; measured: MeasuredPlan }) {
  const { state, live } = useDraft()
  const { plan, tool, sketch, chosen, hidden, hiddenFaces, gridMm } = editor
  /** What can be seen, and so met by the pointer. */
  const seen = useMemo(() => withoutFaces(plan, state.design, hiddenFaces), [plan, state.design, hiddenFaces])
  const { ref, widthPx } = useWidth<HTMLDivElement>(720)
  const size: SizePx = { width: widthPx, height: HEIGHT_PX }
  const [own, setView] = useState<View | null>(null)
  const fitted = useMemo(() => fitView(plan, { width: widthPx, height: HEIGHT_PX }), [plan, widthPx])
  // While something is dragged the picture stands still.
  const view = own ?? fitted
  const [snap, setSnap] = useState<Snap | null>(null)
  const press = useRef<Press | null>(null)
  const fingers = useRef(new Map<number, readonly [number, number]>())
  const { unit: chosenUnit } = useLengthUnit()
  const unit = getShownUnit('mm', chosenUnit)
  const [measure, setMeasure] = useState<readonly PointMm[] | null>(null)

  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return
      if (press.current?.kind === 'move') editor.endDrag(false)
      press.current = null
      setSnap(null)
      // A dialog over the page closes by this key too: it is left to it.
      if (editor.tool !== null && document.querySelector('[role=dialog]') === null) editor.start(null)
    }
    document.addEventListener('keydown', onKeyDown)
    return () => document.removeEventListener('keydown', onKeyDown)
  }, [editor])

  const pixelOf = (event: PointerEvent<SVGSVGElement> | WheelEvent<SVGSVGElement>): readonly [number, number] => {
    const box = event.currentTarget.getBoundingClientRect()
    return [
      ((event.clientX - box.left) / box.width) * size.width,
      ((event.clientY - box.top) / box.height) * size.height,
    ]
  }
  const toleranceMm = REACH_PX * view.mmPerPx
  const snapTo = (atMm: PointMm, except: Hit['ref'] | null = null): Snap =>
    snapAt(seen, atMm, { toleranceMm, gridMm, hidden, except, fromMm: sketch.at(-1) ?? measure?.at(-1) ?? null })

  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button > 1) return
    const at = pixelOf(event)
    fingers.current.set(event.pointerId, at)
    event.currentTarget.setPointerCapture(event.pointerId)
    if (fingers.current.size > 1) {
      // Two fingers move the picture and never draw.
      if (press.current?.kind === 'move') editor.endDrag(false)
      press.current = null
      return
    }
    const startMm = toPlan(view, size, at)
    const hits = tool === null && measure === null ? hitsAt(seen, startMm, { toleranceMm, hidden }) : []
    const hit = hits.find((each) => chosen !== null && isSameRef(each.ref, chosen.ref)) ?? hits[0] ?? null
    press.current = { pointerId: event.pointerId, startPx: at, startMm, hit, base: plan, view, kind: 'still' }
  }

  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const at = pixelOf(event)
    const before = fingers.current.get(event.pointerId)
    if (fingers.current.size === 2 && before !== undefined) {
      pinch(event.pointerId, before, at)
      return
    }
    const current = press.current
    if (current === null) {
      if (tool !== null || measure !== null) setSnap(snapTo(toPlan(view, size, at)))
      return
    }
    const moved = Math.hypot(at[0] - current.startPx[0], at[1] - current.startPx[1])
    if (current.kind === 'still' && moved > STILL_PX) {
      const isChosen = current.hit !== null && chosen !== null && isSameRef(current.hit.ref, chosen.ref)
      current.kind = isChosen && !editor.isReadOnly && tool === null && event.buttons === 1 ? 'move' : 'pan'
      if (current.kind === 'move') setView(view)
    }
    if (current.kind === 'pan') {
      const [dx, dy] = [at[0] - current.startPx[0], at[1] - current.startPx[1]]
      const { middleMm, mmPerPx } = current.view
      setView({ mmPerPx, middleMm: [middleMm[0] - dx * mmPerPx, middleMm[1] + dy * mmPerPx] })
    } else if (current.kind === 'move' && current.hit !== null) {
      const act = dragEdit(current.hit, current.startMm, toPlan(view, size, at), (mm) =>
        snapTo(mm, current.hit?.ref ?? null),
      )
      setSnap(act.snap)
      editor.drag(current.base, act.edit)
    }
  }

  const pinch = (pointerId: number, before: readonly [number, number], at: readonly [number, number]) => {
    const other = [...fingers.current].find(([id]) => id !== pointerId)?.[1]
    fingers.current.set(pointerId, at)
    if (other === undefined) return
    const spread = (a: readonly [number, number]) => Math.max(1, Math.hypot(a[0] - other[0], a[1] - other[1]))
    const middle = (a: readonly [number, number]) => [(a[0] + other[0]) / 2, (a[1] + other[1]) / 2] as const
    const zoomed = zoomBy(view, spread(at) / spread(before), toPlan(view, size, middle(before)))
    const [from, to] = [middle(before), middle(at)]
    setView({
      mmPerPx: zoomed.mmPerPx,
      middleMm: [
        zoomed.middleMm[0] - (to[0] - from[0]) * zoomed.mmPerPx,
        zoomed.middleMm[1] + (to[1] - from[1]) * zoomed.mmPerPx,
      ],
    })
  }

  const onPointerUp = (event: PointerEvent<SVGSVGElement>) => {
    fingers.current.delete(event.pointerId)
    const current = press.current
    if (current === null || current.pointerId !== event.pointerId) return
    press.current = null
    if (current.kind === 'move') {
      editor.endDrag(true)
      setSnap(null)
    } else if (current.kind === 'still') {
      click(current)
    }
  }

  /** Nothing is done before the pointer is let go. */
  const click = ({ startMm, hit }: Press) => {
    if (measure !== null) {
      const { atMm } = snapTo(startMm)
      setMeasure(measure.length === 2 ? [atMm] : [...measure, atMm])
    } else if (tool !== null) {
      editor.addPoint(snapTo(startMm).atMm)
    } else if (hit === null) {
      editor.choose(null)
    } else {
      const hits = hitsAt(seen, startMm, { toleranceMm, hidden })
      const at = chosen === null ? -1 : hits.findIndex((each) => isSameRef(each.ref, chosen.ref))
      const same = hits[at]
      // A second click on the same place takes the point that was met, then what lies under it.
      const takesPoint = same?.part === 'point' && chosen?.point === null
      const next = takesPoint ? same : (hits[at + 1] ?? hits[0])
      if (next !== undefined) editor.choose({ ref: next.ref, point: takesPoint ? next.point : null })
    }
  }

  const cancel = () => {
    if (press.current?.kind === 'move') editor.endDrag(false)
    press.current = null
    fingers.current.clear()
  }
  const zoom = (factor: number) => setView(zoomBy(view, factor, view.middleMm))
  const pins = useMemo(
    () => pinFindings(listFindings(live.evaluatedDesign, live.evaluation, measured)),
    [live.evaluatedDesign, live.evaluation, measured],
  )
  const over = chosen === null ? null : shapeOf(plan, chosen.ref)
  const dot = 4.5 * view.mmPerPx
  const [from, to] = measure ?? []
  return (
    <div className="plan-surface">
      <div ref={ref}>
        <svg
          viewBox={viewBoxOf(view, size)}
          width="100%"
          height={HEIGHT_PX}
          role="img"
          aria-label={`Plan of ${state.design.name}. What is drawn is listed beside it.`}
          className="plan-canvas"
          data-draws={tool !== null || measure !== null ? '' : undefined}
          onPointerDown={onPointerDown}
          onPointerMove={onPointerMove}
          onPointerUp={onPointerUp}
          onPointerCancel={cancel}
          onWheel={(event) => {
            if (!event.ctrlKey && !event.metaKey) return
            setView(zoomBy(view, event.deltaY < 0 ? 1.2 : 1 / 1.2, toPlan(view, size, pixelOf(event))))
          }}
        >
          <defs>
            <pattern
              id="plan-hatch"
              width={8 * view.mmPerPx}
              height={8 * view.mmPerPx}
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <line x1="0" y1="0" x2="0" y2={8 * view.mmPerPx} className="plan-hatch" />
            </pattern>
          </defs>
          <PlanShapes plan={seen} design={state.design} measured={measured} hidden={hidden} mmPerPx={view.mmPerPx} />
          {over !== null && (
            <g>
              <path d={over.d} className="plan-chosen-shape" strokeLinecap="round" />
              {over.points.map(([x, y], index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a point has no identity but its place on the path.
                <rect key={index} x={x - dot} y={-y - dot} width={2 * dot} height={2 * dot} className="plan-handle" />
              ))}
            </g>
          )}
          {sketch.length > 0 && (
            <path
              d={`M${[...sketch, ...(snap === null ? [] : [snap.atMm])].map(([x, y]) => `${x} ${-y}`).join('L')}`}
              className="plan-sketch-shape"
            />
          )}
          {snap !== null && <SnapMark snap={snap} size={dot} />}
          {from !== undefined && to !== undefined && (
            <line x1={from[0]} y1={-from[1]} x2={to[0]} y2={-to[1]} className="plan-measure" />
          )}
          <g className="plan-pins" fontSize={11 * view.mmPerPx}>
            {pins.map((pin) => (
              <PinMark key={pin.atMm.join(' ')} pin={pin} mmPerPx={view.mmPerPx} />
            ))}
          </g>
        </svg>
      </div>
      <div className="row no-print">
        <Button onPress={() => zoom(1.5)}>Zoom in</Button>
        <Button onPress={() => zoom(1 / 1.5)}>Zoom out</Button>
        <Button onPress={() => setView(null)}>Show all of it</Button>
        <button
          type="button"
          className="choice"
          aria-pressed={measure !== null}
          onClick={() => setMeasure(measure === null ? [] : null)}
        >
          Measure
        </button>
        {measure !== null && (
          <span className="small" role="status">
            {from !== undefined && to !== undefined
              ? `${digitsOfResultLength(Math.hypot(to[0] - from[0], to[1] - from[1]), 'mm', unit)} ${getUnitSymbol(unit)}; along x ${digitsOfResultLength(Math.abs(to[0] - from[0]), 'mm', unit)}, along y ${digitsOfResultLength(Math.abs(to[1] - from[1]), 'mm', unit)}`
              : 'Click two places.'}
          </span>
        )}
      </div>
    </div>
  )
}

/** A point goes where it is taken to; a whole shape goes by how far the pointer went. */
function dragEdit(
  hit: Hit,
  startMm: PointMm,
  atMm: PointMm,
  snapTo: (atMm: PointMm) => Snap,
): { edit: PlanEdit; snap: Snap | null } {
  if (hit.part === 'point' && hit.point !== null) {
    const snap = snapTo(atMm)
    return { snap, edit: { act: 'move-point', of: hit.ref, point: hit.point, toMm: snap.atMm } }
  }
  const [from, to] = [snapTo(startMm).atMm, snapTo(atMm)]
  const round = (mm: number) => Math.round(mm * 1e6) / 1e6
  return {
    snap: to,
    edit: { act: 'move', of: hit.ref, byMm: [round(to.atMm[0] - from[0]), round(to.atMm[1] - from[1])] },
  }
}

function SnapMark({ snap, size }: { snap: Snap; size: number }) {
  const [x, y] = snap.atMm
  return (
    <g className="plan-snap">
      {snap.guides.map(([a, b]) => (
        <line key={`${a} ${b}`} x1={a[0]} y1={-a[1]} x2={b[0]} y2={-b[1]} />
      ))}
      <circle cx={x} cy={-y} r={size} />
      <title>{snap.to ?? 'free'}</title>
    </g>
  )
}

/** Numbers that fit on a pin; the list has all. */
const MAX_ON_PIN = 3

function PinMark({ pin: { atMm, numbers, verdict }, mmPerPx }: { pin: Pin; mmPerPx: number }) {
  const [x, y] = atMm
  const text = numbers.length > MAX_ON_PIN ? `${numbers.slice(0, MAX_ON_PIN).join(', ')}, …` : numbers.join(', ')
  const width = (10 + 7 * text.length) * mmPerPx
  return (
    <g data-verdict={verdict}>
      <rect x={x - width / 2} y={-y - 24 * mmPerPx} width={width} height={18 * mmPerPx} rx={9 * mmPerPx} />
      <text x={x} y={-y - 11 * mmPerPx} textAnchor="middle">
        {text}
      </text>
    </g>
  )
}

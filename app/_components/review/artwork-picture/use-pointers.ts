import { type PointerEvent, useRef, type WheelEvent } from 'react'
import { type PointMm, panBy, placeOf, type SizePx, type View, zoomBy } from '@/lib/artwork-picture'

/** A press that moves less than this is a click. */
const STILL_PX = 4
const WHEEL_FACTOR = 1.2

type Pixel = readonly [number, number]

interface PointerOptions {
  readonly view: View
  readonly size: SizePx
  readonly setView: (view: View) => void
  readonly onClick: (atMm: PointMm) => void
}

/** Dragging moves the picture, two fingers size it, a click marks a place. The wheel sizes with Ctrl, and scrolls the page without. */
export function usePointers({ view, size, setView, onClick }: PointerOptions) {
  const fingers = useRef(new Map<number, Pixel>())
  const press = useRef<{ readonly id: number; readonly at: Pixel; readonly view: View; isStill: boolean } | null>(null)
  const pixelOf = (event: PointerEvent<HTMLElement> | WheelEvent<HTMLElement>): Pixel => {
    const box = event.currentTarget.getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button > 1) return
    event.currentTarget.setPointerCapture(event.pointerId)
    const at = pixelOf(event)
    fingers.current.set(event.pointerId, at)
    press.current = fingers.current.size > 1 ? null : { id: event.pointerId, at, view, isStill: true }
  }
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const at = pixelOf(event)
    const before = fingers.current.get(event.pointerId)
    if (before === undefined) return
    if (fingers.current.size === 2) {
      const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1]
      fingers.current.set(event.pointerId, at)
      if (other !== undefined) setView(pinch(view, size, other, before, at))
      return
    }
    const current = press.current
    if (current === null) return
    const [dx, dy] = [at[0] - current.at[0], at[1] - current.at[1]]
    if (current.isStill && Math.hypot(dx, dy) <= STILL_PX) return
    current.isStill = false
    setView(panBy(current.view, dx, dy))
  }
  const onPointerUp = (event: PointerEvent<HTMLElement>) => {
    fingers.current.delete(event.pointerId)
    const current = press.current
    if (current === null || current.id !== event.pointerId) return
    press.current = null
    if (current.isStill) onClick(placeOf(view, size, current.at))
  }
  const onPointerCancel = () => {
    fingers.current.clear()
    press.current = null
  }
  const onWheel = (event: WheelEvent<HTMLElement>) => {
    if (!event.ctrlKey && !event.metaKey) return
    setView(zoomBy(view, event.deltaY < 0 ? WHEEL_FACTOR : 1 / WHEEL_FACTOR, placeOf(view, size, pixelOf(event))))
  }
  return { onPointerDown, onPointerMove, onPointerUp, onPointerCancel, onWheel }
}

function pinch(view: View, size: SizePx, other: Pixel, before: Pixel, at: Pixel): View {
  const spread = (pixel: Pixel) => Math.max(1, Math.hypot(pixel[0] - other[0], pixel[1] - other[1]))
  const middle = (pixel: Pixel): Pixel => [(pixel[0] + other[0]) / 2, (pixel[1] + other[1]) / 2]
  const zoomed = zoomBy(view, spread(at) / spread(before), placeOf(view, size, middle(before)))
  const [from, to] = [middle(before), middle(at)]
  return panBy(zoomed, to[0] - from[0], to[1] - from[1])
}

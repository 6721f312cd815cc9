import { panBy, type SizePx, turnOver, type View, zoomBy } from '@/lib/artwork-picture'

const STEP_FRACTION = 0.1
const ZOOM_FACTOR = 1.5

/** What a key makes of the view; null for keys that are not the picture's. Arrow keys look further in their direction. */
export function viewAfterKey(key: string, view: View, { width, height }: SizePx): View | null {
  const step = Math.min(width, height) * STEP_FRACTION
  switch (key) {
    case 'ArrowLeft':
      return panBy(view, step, 0)
    case 'ArrowRight':
      return panBy(view, -step, 0)
    case 'ArrowUp':
      return panBy(view, 0, step)
    case 'ArrowDown':
      return panBy(view, 0, -step)
    case '+':
    case '=':
      return zoomBy(view, ZOOM_FACTOR, view.middleMm)
    case '-':
      return zoomBy(view, 1 / ZOOM_FACTOR, view.middleMm)
    case 'f':
    case 'F':
      return turnOver(view)
    default:
      return null
  }
}

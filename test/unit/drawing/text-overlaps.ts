import type { Picture } from '@/lib/drawing'
import { listTextBoxes } from './sheet-boxes'

/** Texts of a picture in mm that lie over each other or leave it. */
export function findTextOverlaps(picture: Picture): string[] {
  const boxes = listTextBoxes(picture)
  const outside = boxes.filter(
    ({ left, right, top, bottom }) => left < 0 || top < 0 || right > picture.widthPx || bottom > picture.heightPx,
  )
  const over = boxes.flatMap((box, index) =>
    boxes
      .slice(index + 1)
      .filter(
        (other) =>
          Math.min(box.right, other.right) - Math.max(box.left, other.left) > 0.05 &&
          Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top) > 0.05,
      )
      .map((other) => `${box.text} / ${other.text}`),
  )
  return [...outside.map(({ text }) => text), ...over]
}

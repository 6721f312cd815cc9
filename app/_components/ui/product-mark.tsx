import { PRODUCT_MARK_PATHS, PRODUCT_MARK_SIZE } from '@/lib/drawing'

/** Beside the product's name, which says what the mark shows. */
export function ProductMark({ sizePx = 22 }: { sizePx?: number }) {
  return (
    <svg
      className="product-mark"
      viewBox={`0 0 ${PRODUCT_MARK_SIZE} ${PRODUCT_MARK_SIZE}`}
      width={sizePx}
      height={sizePx}
      aria-hidden="true"
      focusable="false"
    >
      {PRODUCT_MARK_PATHS.map(({ part, d, width }) => (
        <path key={d} d={d} strokeWidth={width} data-part={part} />
      ))}
    </svg>
  )
}

import { listFoldedLegend, SCREEN_PALETTE } from '@/lib/drawing'
import type { ShapeBody } from '@/lib/engine/folding'

export function FoldLegend({ bodies }: { readonly bodies: readonly ShapeBody[] }) {
  return (
    <ul className="fold-legend small">
      {listFoldedLegend(bodies).map(({ fill, words }) => (
        <li key={words}>
          <span className="fold-swatch" style={{ background: SCREEN_PALETTE[fill] }} aria-hidden />
          {words}
        </li>
      ))}
    </ul>
  )
}

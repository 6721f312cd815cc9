import type { EvaluationContext } from '../context'
import type { Features } from '../design'
import type { Limit } from '../results'

type Corner = Features['outlineCorners'][number]

/** Does film of a flex zone end in the corner? What nobody said follows where the part is all flexible, or has no flex zone. */
function bordersFlex({ design }: EvaluationContext, { bordersFlex: stated }: Corner): boolean | null {
  if (stated !== null) return stated
  const { zones } = design.construction
  if (zones.every(({ kind }) => kind === 'flex')) return true
  return zones.some(({ kind }) => kind === 'flex') ? null : false
}

/** The limit of a corner; null where it depends on what nobody said. A radius that is enough beside flex is enough, one that is too small elsewhere is too small. */
export function findCornerLimit(context: EvaluationContext, corner: Corner): Limit | null {
  const [atFlex, elsewhere] = [context.getLimit('cornerInsideRadiusMm'), context.getLimit('cornerElsewhereRadiusMm')]
  const isFlex = bordersFlex(context, corner)
  if (isFlex !== null) return isFlex ? atFlex : elsewhere
  const { insideRadiusMm } = corner
  if (insideRadiusMm === null) return null
  if (insideRadiusMm >= Math.max(atFlex.value, elsewhere.value)) return atFlex
  return insideRadiusMm < Math.min(atFlex.value, elsewhere.value) ? elsewhere : null
}

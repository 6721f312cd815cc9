import type { EvaluationContext } from '../context'
import type { Drawing } from '../design'

const known = new WeakMap<Drawing, ReadonlySet<string>>()

/** Does the plan draw this dimension? What was stated of it then does not decide. */
export function isDrawn({ drawing }: EvaluationContext, path: readonly (string | number)[]): boolean {
  if (drawing.measures === null) return false
  const paths = known.get(drawing) ?? new Set(drawing.values.map((value) => value.path.join('/')))
  known.set(drawing, paths)
  return paths.has(path.join('/'))
}

/** How a dimension came to its value, and whether somebody typed it. */
export function sourceOf(
  context: EvaluationContext,
  path: readonly (string | number)[],
  typed: string,
): { readonly equation: string; readonly isTyped?: true } {
  return isDrawn(context, path) ? { equation: 'drawn in plan' } : { equation: typed, isTyped: true }
}

import { z } from 'zod'
import { findCrossing, getAreaUm2, type Polygon } from '@/lib/geometry'
import type { Issue } from '../results'

const coordinateMmSchema = z.number().min(-5000, 'must be at least -5000 mm').max(5000, 'must be at most 5000 mm')

/**
 * Outline of the part in the flat: the corners of a simple polygon in order, in either direction, x along the part and y
 * across it as its drawing has them. Curves are given as enough corners outside the curve.
 */
export const outlineSchema = z.strictObject({
  verticesMm: z
    .array(z.tuple([coordinateMmSchema, coordinateMmSchema]))
    .min(3, 'an outline has at least 3 corners')
    .max(2000, 'an outline has at most 2000 corners'),
  /** The axis of the part that should lie along the foil's rolling direction; `either` where it does not matter, null where nobody has said yet. */
  rollingDirection: z.enum(['along-x', 'along-y', 'either']).nullable(),
})

export type Outline = z.infer<typeof outlineSchema>

/** The corners in whole micrometres, rounded to the nearest. */
export function toWholeOutline({ verticesMm }: Pick<Outline, 'verticesMm'>): Polygon {
  return verticesMm.map(([x, y]) => [Math.round(x * 1000), Math.round(y * 1000)])
}

/** Why an outline is no simple polygon, with the two edges that meet; null where it is one. */
export function findOutlineIssue(outline: Outline | null | undefined): Issue | null {
  if (outline === null || outline === undefined) return null
  const polygon = toWholeOutline(outline)
  const crossing = findCrossing(polygon)
  const issue = (index: number, message: string): Issue => ({
    code: 'outline',
    path: ['features', 'outline', 'verticesMm', index],
    message,
  })
  if (crossing === null) {
    return getAreaUm2(polygon) === 0 ? issue(0, 'the corners lie in one line: the outline holds nothing') : null
  }
  const nameEdge = (index: number): string => {
    const next = (index + 1) % polygon.length
    const [from, to] = [outline.verticesMm[index], outline.verticesMm[next]]
    return `the edge from corner ${index + 1} (${from?.join(', ')}) to corner ${next + 1} (${to?.join(', ')})`
  }
  const { firstEdge, secondEdge, kind } = crossing
  switch (kind) {
    case 'no-length':
      return issue(firstEdge, `${nameEdge(firstEdge)} has no length`)
    case 'overlap':
      return issue(secondEdge, `${nameEdge(secondEdge)} runs back along ${nameEdge(firstEdge)}`)
    case 'cross':
      return issue(secondEdge, `${nameEdge(secondEdge)} meets ${nameEdge(firstEdge)}`)
  }
}

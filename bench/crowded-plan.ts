import { EMPTY_PLAN, type Plan } from '@/lib/plan'

/** Lists that one kind of shape can fill; a plan of this many needs several. */
const LISTS = ['coverlayOpenings', 'components', 'stiffeners'] as const

/** A plan of many squares on a grid of 5 mm, all of it valid but for how it overlaps. */
export function makeCrowdedPlan(count: number): Plan {
  const side = Math.ceil(Math.sqrt(count))
  const corner = (x: number, y: number) => ({ atMm: [x, y] as [number, number], viaMm: null })
  const square = (x: number, y: number) => [corner(x, y), corner(x + 3, y), corner(x + 3, y + 3), corner(x, y + 3)]
  const whole = side * 5 + 5
  const plan: Plan = {
    ...EMPTY_PLAN,
    outline: [corner(0, 0), corner(whole, 0), corner(whole, whole), corner(0, whole)],
    coverlayOpenings: [],
    components: [],
    stiffeners: [],
  }
  for (let at = 0; at < count; at += 1) {
    const nodes = square(2 + (at % side) * 5, 2 + Math.floor(at / side) * 5)
    const list = LISTS[at < 1000 ? 0 : at < 1500 ? 1 : 2]
    if (list === 'coverlayOpenings') plan.coverlayOpenings.push({ id: `c-${at}`, openingId: 'x', layerId: null, nodes })
    else if (list === 'components')
      plan.components.push({ id: `c-${at}`, componentId: 'x', face: null, nodes, heightMm: null })
    else plan.stiffeners.push({ id: `c-${at}`, stiffenerId: 'x', nodes })
  }
  return plan
}

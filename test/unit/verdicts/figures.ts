import type { Design, ReviewFacts } from '@/lib/engine'
import { assemble } from '@/lib/engine/assembly'
import { buildContext } from '@/lib/engine/evaluate'

/**
 * What items are judged on, without what only pictures and remarks show: curves of a loaded bend take half of its time. `every-item.test.ts` holds that no
 * verdict differs.
 */
export const buildFigures = (design: Design, facts: ReviewFacts): ReturnType<typeof buildContext> =>
  buildContext(design, { facts }, assemble(design, { detail: 'figures' }))

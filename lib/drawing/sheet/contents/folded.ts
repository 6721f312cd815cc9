import type { Design } from '@/lib/engine'
import { listFoldNotes, listFoldSteps, measureRoom, prepareFolding, shapeFold } from '@/lib/engine/folding'
import type { SheetFolded, SheetResults } from './model'

/** Turn of one strip of a bend on paper: coarser than on screen, where it can be looked at closely. */
const STRIP_DEG = 10

/** The part folded by all its bends; null where design and results do not say enough, or nothing bends. */
export function makeFolded(design: Design, results: SheetResults | null): SheetFolded | null {
  if (results === null || design.plan === null) return null
  const folding = prepareFolding(design, results.zones, results.bends)
  if (folding.kind !== 'foldable' || folding.value.order.length === 0) return null
  const steps = listFoldSteps(design, folding.value)
  const bodies = shapeFold(design, folding.value, steps.length, STRIP_DEG)
  const room = measureRoom(design, folding.value)
  const notes = listFoldNotes(design, folding.value)
  return { kind: 'folded', id: 'folded', title: 'Part folded', bodies, steps, room, notes, leastMm: 180 }
}

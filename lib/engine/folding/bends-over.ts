import { foldPart, listBandsOver } from '@/lib/fold'
import { type Bend, callByName, type Design } from '../design'
import type { FoldableDesign } from './fold-design'

/** Two bends that lie over each other when the part is folded whole. */
export interface BendsOver {
  readonly over: Bend
  readonly under: Bend
  /** Least radial distance between their faces where it was looked for. */
  readonly gapMm: number
}

/** Each pair once, at its least gap. */
export function listBendsOver({ bends }: Design, { flat, fixedPlateId }: FoldableDesign): readonly BendsOver[] {
  const pairs = new Map<string, BendsOver>()
  for (const { overId, underId, gapMm } of listBandsOver(flat.part, foldPart(flat.part, fixedPlateId))) {
    const [over, under] = [overId, underId].map((id) => bends.find((bend) => bend.id === flat.bendOfBand.get(id)))
    if (over === undefined || under === undefined || over === under) continue
    const key = `${over.id} ${under.id}`
    const known = pairs.get(key)
    if (known === undefined || gapMm < known.gapMm) pairs.set(key, { over, under, gapMm })
  }
  return [...pairs.values()]
}

/** `Bend Cover lies over bend Hinge: pressed together, the inner one creases.` */
export const describeBendsOver = ({ over, under }: Pick<BendsOver, 'over' | 'under'>): string =>
  `${callByName('Bend', over.name)} lies over ${callByName('bend', under.name)}: pressed together, the inner one creases.`

import type { Brief } from '../design'
import type { Term } from './given'

/** The facts that an agreement on drying consists of. A dry pack needs no bake. */
export function listDryingTerms({ assembly }: Brief): Term[] {
  const term = (field: keyof typeof assembly, label: string): Term => ({
    path: ['brief', 'assembly', field],
    label,
    value: assembly[field],
  })
  return [
    term('drying', 'how the part is dried'),
    ...(assembly.drying === 'dry-pack' ? [] : [term('bakeDegC', 'bake temperature'), term('bakeHours', 'bake time')]),
    term('toSolderHours', 'time from oven or pack to soldering'),
    term('dryingSetBy', 'who sets the drying'),
  ]
}

/** The facts that an agreement on packing consists of. */
export function listPackingTerms({ assembly }: Brief): Term[] {
  const term = (field: keyof typeof assembly, label: string): Term => ({
    path: ['brief', 'assembly', field],
    label,
    value: assembly[field],
  })
  return [
    term('packedAs', 'packing'),
    term('isDryPacked', 'whether it is dry packed'),
    term('storageMonths', 'longest storage'),
  ]
}

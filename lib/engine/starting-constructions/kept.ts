import { type Design, listLayerMaterialIds, makeBlankDesign } from '../design'
import { markProposed } from './marks'

/**
 * What of a design other projects can begin with: its layers, zones and bends, and its own materials as far as layers are made of them. Brief,
 * features, drawing and plan are the part's.
 */
export function makeKeptConstruction(design: Design): Design {
  const { layers, zones } = design.construction
  const used = listLayerMaterialIds(layers)
  return {
    ...makeBlankDesign(design.name),
    materials: design.materials.filter(({ id }) => used.has(id)),
    construction: { ...design.construction, layers, zones },
    bends: design.bends,
    assumed: design.assumed.filter((mark) => KEPT_LISTS.has(mark.split('.')[0] ?? '')),
  }
}

const KEPT_LISTS: ReadonlySet<string> = new Set(['layers', 'zones', 'bends'])

/** A design that begins with a kept construction: what it says of the part is a proposal until somebody confirms it. */
export function beginWithKept(kept: Design, name: string): Design {
  return markProposed({ ...kept, name })
}

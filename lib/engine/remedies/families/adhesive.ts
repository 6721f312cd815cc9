import { editLayers } from '../edits'
import type { Candidate, Family } from '../subject'

/** Adhesives that coverlay and clad are ordinarily sold with, by id of the library. Common practice, no published source. */
const ORDINARY_ADHESIVE_IDS = ['acrylic-adhesive', 'epoxy-adhesive', 'polyimide-adhesive'] as const
/** Sticks the part to something else: it bonds no coverlay. */
const NO_COVERLAY_ADHESIVE_ID = 'pressure-sensitive-adhesive'

/** Another kind of adhesive in the bend: a stiffer or softer one moves the neutral axis. */
export const adhesiveKind: Family = ({ design, layers, findMaterial }) => {
  const present = layers.flatMap(({ layer }) =>
    layer.kind === 'adhesive' && layer.materialId !== NO_COVERLAY_ADHESIVE_ID ? [layer] : [],
  )
  if (present.length === 0) return []
  return ORDINARY_ADHESIVE_IDS.flatMap((materialId): Candidate[] => {
    const replaced = present.filter((layer) => layer.materialId !== materialId)
    const material = findMaterial(materialId)
    if (replaced.length === 0 || material === null) return []
    const ids = new Set(replaced.map(({ id }) => id))
    return [
      {
        id: `adhesive-kind:${materialId}`,
        family: 'adhesive-kind',
        title: 'Another kind of adhesive',
        detail: `${replaced.map(({ name }) => name).join(', ')}: ${material.name}`,
        cautions: ['Another adhesive flows, cures and ages differently: ask the fabricator before changing it.'],
        forbiddenBy: [],
        edited: editLayers(design, (layer) =>
          layer.kind === 'adhesive' && ids.has(layer.id) ? { ...layer, materialId } : layer,
        ),
        touches: ['adhesive-kind'],
      },
    ]
  })
}

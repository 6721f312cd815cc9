import { type Design, findLibraryMaterial, type Layer, type Material, readOwnMaterialId } from '@/lib/engine'
import type { Choice } from '../cells/choice-cells'
import { listMaterialsFor } from '../draft'

/**
 * What a layer may be made of, under a head for each place that it comes from: the design itself, the workspace, the library. Without
 * materials of one's own there is one place, and no head.
 */
export function listMaterialChoices(
  design: Pick<Design, 'materials'>,
  kind: Layer['kind'],
  offered: readonly Material[],
): readonly Choice<string>[] {
  const choices = listMaterialsFor(design, kind, offered).map((material) => ({
    value: material.id,
    label: nameMaterial(material),
    group: findGroup(design, material.id),
  }))
  const hasOwn = choices.some(({ group }) => group !== LIBRARY)
  if (!hasOwn) return choices.map(({ value, label }) => ({ value, label }))
  return GROUPS.flatMap((group) => choices.filter((choice) => choice.group === group))
}

const LIBRARY = 'Library'
const GROUPS = ['In this design', 'Workspace', LIBRARY] as const

function findGroup(design: Pick<Design, 'materials'>, id: string): (typeof GROUPS)[number] {
  if (design.materials.some((own) => own.id === id)) return 'In this design'
  return findLibraryMaterial(id) === null ? 'Workspace' : LIBRARY
}

/** Two versions of one material may stand beside each other. */
export function nameMaterial({ id, name }: Material): string {
  const own = readOwnMaterialId(id)
  return own === null || own.version === 1 ? name : `${name} (version ${own.version})`
}

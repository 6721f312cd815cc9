import { LAYER_FIELDS, LAYER_KINDS, listChoices, nameLayerKind, ZONE_FIELDS } from '@/lib/engine'

/** In the order of the record of kinds: a new kind is in the picker as soon as it stands there. */
export const LAYER_KIND_CHOICES = LAYER_KINDS.map((kind) => ({ value: kind, label: nameLayerKind(kind) }))
export const ROLE_CHOICES = listChoices(LAYER_FIELDS.role)
export const PLANE_CHOICES = listChoices(LAYER_FIELDS.planePattern)
export const PLATING_CHOICES = listChoices(LAYER_FIELDS.plating.fields.process)
export const PLATED_COPPER_CHOICES = listChoices(ZONE_FIELDS.presence.entry.platedCopper)
export const ZONE_KIND_CHOICES = listChoices(ZONE_FIELDS.kind)

import type { Design, MarkableList } from '@/lib/engine'

/** Marks a list as having none of its kind, or takes the mark off. */
export function markNone(design: Design, list: MarkableList, isNone: boolean): Design {
  const others = design.features.none.filter((marked) => marked !== list)
  return { ...design, features: { ...design.features, none: isNone ? [...others, list] : others } }
}

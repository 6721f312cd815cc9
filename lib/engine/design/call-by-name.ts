import { capitalise } from '../units'

/** What people name in a design, and how a sentence calls it. */
export type NamedKind = 'bend' | 'zone' | 'layer' | 'stiffener'

/**
 * `bend Mirror hinge`, but `Bend 2` and `Bend round the housing` by their names alone: nothing is called a bend twice.
 *
 * @param kind  with a capital where the sentence begins with it
 */
export function callByName(kind: NamedKind | Capitalize<NamedKind>, name: string): string {
  const saysItself = new RegExp(`^${kind}(?![\\p{L}\\p{N}])`, 'iu').test(name.trim())
  if (!saysItself) return `${kind} ${name}`
  return kind.charAt(0) === kind.charAt(0).toUpperCase() ? capitalise(name) : name
}

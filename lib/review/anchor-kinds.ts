/** What a thread may be about. */
export const ANCHOR_KINDS = [
  'revision',
  'item',
  'layer',
  'zone',
  'bend',
  /** Id: list and entry, as `holes/hole-1`. */
  'feature',
  /** A value of the brief, a bend, a layer or a zone. Id: its place, as `bends/hinge/insideRadiusMm`. */
  'value',
  /** A note on the drawing. */
  'note',
  /** A row of the comparison with a fabricator's matrix. Id: the trade parameter. */
  'parameter',
  'artwork',
  'proposal',
] as const
export type AnchorKind = (typeof ANCHOR_KINDS)[number]

/** What a thread is about; `revision` for the whole of it. */
export interface ThreadAnchor {
  readonly kind: AnchorKind
  readonly id: string
  readonly label: string
}

/** Labels of these say themselves what they name; of the others the kind is said before. */
const NAMED_BY_LABEL: readonly string[] = ['feature', 'value', 'note', 'parameter'] satisfies AnchorKind[]

/** `layer Top`, `hole Mounting`: within a sentence. */
export function callAnchor(kind: string, label: string): string {
  return NAMED_BY_LABEL.includes(kind) ? label : `${kind} ${label}`
}

import { type ExtraRoom, type NestedPart, type Nesting, nestPart, type PanelFormat } from '../panel'

/** Nests a part on a format; may know the answer already. */
export type Nester = (part: NestedPart, format: PanelFormat, extra: ExtraRoom) => Nesting

/**
 * A nester that remembers: the same outline on the same panel comes to the same placements, whoever asks, so that saving a
 * design whose outline did not change costs nothing here. What was asked longest ago is forgotten first.
 */
export function makeNester(mostKept = 300): Nester {
  const kept = new Map<string, Nesting>()
  return (part, format, extra) => {
    // The name and the note of a format move nothing.
    const { id: _id, name: _name, note: _note, ...measures } = format
    const { extraMarginMm, extraSpacingMm } = extra
    const key = JSON.stringify([part.outline, part.rollingDirection, measures, extraMarginMm, extraSpacingMm])
    const known = kept.get(key)
    const nesting = known ?? nestPart(part, format, extra)
    kept.delete(key)
    kept.set(key, nesting)
    if (kept.size > mostKept) {
      const [oldest] = kept.keys()
      if (oldest !== undefined) kept.delete(oldest)
    }
    return nesting
  }
}

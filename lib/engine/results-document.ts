import { CAUTIONS } from './cautions'
import type { Evaluation } from './results'
import { citeSource, SOURCE_KINDS, SOURCES, type SourceKey } from './sources'

interface CitedSource {
  /** In the words in which screens and reports cite it. */
  readonly citation: string
  /** How far it is known: `quoted`, `published` ... */
  readonly kind: string
}

/**
 * Results as a document for another program: the cautions first, so that nobody overlooks them, then the sources that
 * decided outcomes rest on, as `sourceKey` names them, then the results as they are.
 *
 * @param recorded  what is written out; null where nothing is recorded
 * @param evaluation  the results in it
 */
export function makeResultsDocument<T extends object>(
  recorded: T | null,
  evaluation: Pick<Evaluation, 'items'> | null,
): { readonly cautions: readonly string[]; readonly sources: Readonly<Record<string, CitedSource>> } & Partial<T> {
  return { cautions: CAUTIONS, sources: citeSources(evaluation), ...recorded } as ReturnType<
    typeof makeResultsDocument<T>
  >
}

/** A key that this engine does not know, from results of another version, is left to the results themselves. */
function citeSources(evaluation: Pick<Evaluation, 'items'> | null): Record<string, CitedSource> {
  const outcomes = (evaluation?.items ?? []).flatMap((item) => item.outcomes)
  const keys = new Set(
    outcomes.flatMap((each) =>
      each.kind === 'decided' ? [each.limit.sourceKey, each.sourceKey] : each.kind === 'said' ? [each.sourceKey] : [],
    ),
  )
  return Object.fromEntries(
    [...keys]
      .filter((key): key is SourceKey => Object.hasOwn(SOURCES, key))
      .sort()
      .map((key) => [key, { citation: citeSource(key), kind: SOURCE_KINDS[SOURCES[key].kind] }]),
  )
}

import { type Design, type DraftEvaluation, evaluateDraft } from '@/lib/engine'
import { type CatalogueTemplate, type ItemDefinition, makeCatalogue } from '@/lib/engine/catalogue'
import { markDraftCheckedWhenSaved } from '@/lib/review'
import type { StoredRevision } from './stored-revision'

/*
 * Most of what the engine weighs: the page is there before this is, with the results that were recorded.
 */

let made: { readonly template: CatalogueTemplate; readonly items: readonly ItemDefinition[] } | null = null

/** A page has one version of the catalogue. */
function findItems(template: CatalogueTemplate): readonly ItemDefinition[] {
  if (made?.template !== template) made = { template, items: makeCatalogue(template).items }
  return made.items
}

/** @param saved  results of this very design, where it is the saved one */
export function evaluateLive(
  design: Design,
  {
    limits,
    testedLives,
    artworkFacts,
    checkedLimits,
    template,
  }: Pick<StoredRevision, 'limits' | 'testedLives' | 'artworkFacts' | 'checkedLimits' | 'template'>,
  saved: DraftEvaluation | null,
): DraftEvaluation {
  const items = findItems(template)
  const evaluation = evaluateDraft(design, { limits, testedLives, facts: artworkFacts, items })
  return markDraftCheckedWhenSaved(evaluation, items, checkedLimits, saved)
}

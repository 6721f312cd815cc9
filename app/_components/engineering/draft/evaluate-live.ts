import isSame from 'fast-deep-equal'
import { type Design, evaluateDraft, parseDesign } from '@/lib/engine'
import { type CatalogueTemplate, type ItemDefinition, makeCatalogue } from '@/lib/engine/catalogue'
import { markDraftCheckedWhenSaved } from '@/lib/review'
import type { EvaluationAnswer, EvaluationBasis } from './evaluation-order'

/*
 * Most of what the engine weighs: the page is there before this is, with the results that were recorded.
 */

let made: { readonly template: CatalogueTemplate; readonly items: readonly ItemDefinition[] } | null = null

/** A page has one version of the catalogue. */
function findItems(template: CatalogueTemplate): readonly ItemDefinition[] {
  if (made?.template !== template) made = { template, items: makeCatalogue(template).items }
  return made.items
}

/** Reads a draft as the server would and evaluates it; what is wrong with it where it cannot be read. */
export function evaluateLive(draft: Design, basis: EvaluationBasis): EvaluationAnswer {
  const parsed = parseDesign(draft)
  if (!parsed.ok) return { ok: false, issues: parsed.issues }
  const { limits, testedLives, artworkFacts, checkedLimits, template } = basis
  const items = findItems(template)
  // Results of this very design, where it is the saved one.
  const saved = checkedLimits.length > 0 && isSame(draft, basis.design) ? basis.evaluation : null
  const evaluation = evaluateDraft(parsed.value, { limits, testedLives, facts: artworkFacts, items })
  return {
    ok: true,
    evaluation: markDraftCheckedWhenSaved(evaluation, items, checkedLimits, saved),
    design: isSame(parsed.value, draft) ? null : parsed.value,
  }
}

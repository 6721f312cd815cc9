import { citeSource, type ItemResult, SOURCES, type SourceKey } from '@/lib/engine'
import {
  CATALOGUE,
  type CatalogueEdition,
  getLimitDefinition,
  type ItemDefinition,
  listAskedRoles,
  makeCatalogue,
} from '@/lib/engine/catalogue'
import { fillWhatHelps, readItemProse, readWhatHelps } from '@/lib/engine/catalogue/prose'
import type { ItemText } from './item-text'

/** Where an item's limits and relations come from, as citations, each once. */
export function listItemSources(item: ItemDefinition): readonly string[] {
  const keys = new Set<SourceKey>([...item.limits.map((key) => getLimitDefinition(key).sourceKey), ...item.sourceKeys])
  return [...keys].map((key) => citeSource(key))
}

export function makeItemText(item: ItemDefinition): ItemText {
  return {
    id: item.id,
    section: item.section,
    severity: item.severity,
    question: item.question,
    ...readItemProse(item),
    askedOf: listAskedRoles(item.id),
    appliesTo: item.appliesTo.says,
    decidedWhen: item.decidedWhen,
    answeredBy: item.answeredBy,
    evidence: item.judgment?.evidence ?? null,
    isComputed: item.check !== null,
    sources: listItemSources(item),
    becauseOf: item.becauseOf ?? [],
  }
}

let itemTexts: Readonly<Record<string, ItemText>> | null = null

/** The items of a workspace's version of the catalogue, with the profiles laid over it, by id. */
export function listTextsOf(template: CatalogueEdition): Readonly<Record<string, ItemText>> {
  const grounds = new Map(template.ownItems.map(({ id, ground }) => [id, ground]))
  return Object.fromEntries(
    makeCatalogue(template).items.map((item) => {
      const ground = grounds.get(item.id)
      const text = makeItemText(item)
      return [item.id, ground === undefined ? text : { ...text, sources: [`${ground} (set by the workspace)`] }]
    }),
  )
}

/** The whole catalogue as delivered, by item id. */
export function listItemTexts(): Readonly<Record<string, ItemText>> {
  itemTexts ??= Object.fromEntries(CATALOGUE.map((item) => [item.id, makeItemText(item)]))
  return itemTexts
}

/** Questions of all delivered items, by id. */
export function listItemQuestions(): Readonly<Record<string, string>> {
  return Object.fromEntries(CATALOGUE.map(({ id, question }) => [id, question]))
}

/** What helps with each item that is not met, with how far it is off, by item id. */
export function listWhatHelps(results: readonly ItemResult[]): Readonly<Record<string, readonly string[]>> {
  return Object.fromEntries(
    results
      .filter(({ verdict }) => verdict === 'fails' || verdict === 'thin-margin' || verdict === 'cannot-tell')
      .map(({ itemId, outcomes }) => [itemId, fillWhatHelps(readWhatHelps(itemId), outcomes)]),
  )
}

/** Every source as a citation, by its key. */
export function listCitations(): Readonly<Record<string, string>> {
  return Object.fromEntries((Object.keys(SOURCES) as SourceKey[]).map((key) => [key, citeSource(key)]))
}

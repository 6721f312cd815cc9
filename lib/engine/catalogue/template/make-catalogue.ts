import { ITEM_SECTIONS } from '../../results'
import { defineItem, type ItemDefinition } from '../define-item'
import { ALL_INPUTS, type InputPattern } from '../item-inputs'
import { CATALOGUE } from '../items'
import { DELIVERED_PROFILES, defineProfileFields, type Profile, profileItem } from '../profiles'
import { checkOwn } from './own-check'
import type { CatalogueTemplate, ItemChange, OwnItem } from './schema'

/** A version of the workspace's catalogue with the profiles that one project follows. */
export interface CatalogueEdition extends CatalogueTemplate {
  /** Absent or empty: none. */
  readonly profileIds?: readonly string[]
}

/** An item that is not asked, and on what ground. */
export interface SwitchedOffItem {
  readonly itemId: string
  readonly question: string
  readonly reason: string
}

export interface WorkspaceCatalogue {
  /** What a review goes through, in the order of sections: delivered items first, own ones after them. */
  readonly items: readonly ItemDefinition[]
  readonly switchedOff: readonly SwitchedOffItem[]
  /** Profiles in force, in the order of their ids. */
  readonly profiles: readonly Profile[]
}

/** The delivered catalogue with a workspace's changes, its own items, and the profiles in force laid over both. */
export function makeCatalogue(edition: CatalogueEdition): WorkspaceCatalogue {
  const { profiles, unknownIds } = findProfiles(edition)
  const changes = new Map(edition.itemChanges.map((change) => [change.itemId, change]))
  const items: ItemDefinition[] = []
  const switchedOff: SwitchedOffItem[] = []
  for (const delivered of CATALOGUE) {
    const change = changes.get(delivered.id)
    const isUsual = delivered.onlyWithProfile !== true
    const item = change === undefined ? delivered : changeItem(delivered, change)
    const profiled = profileItem(item, isUsual && change?.isOff !== true, profiles)
    if (profiled.isAsked) items.push(withChanges(item, profiled.changed))
    else if (change?.isOff === true) {
      switchedOff.push({ itemId: item.id, question: item.question, reason: change.reason })
    } else if (isUsual) {
      switchedOff.push({ itemId: item.id, question: item.question, reason: profiled.reasons.join('; ') })
    }
  }
  const own: ItemDefinition[] = []
  for (const ownItem of edition.ownItems) {
    const item = defineOwnItem(ownItem)
    const isUsual = ownItem.onlyWithProfile !== true
    const profiled = profileItem(item, isUsual, profiles)
    if (profiled.isAsked) own.push(withChanges(item, profiled.changed))
    else if (isUsual) {
      switchedOff.push({ itemId: item.id, question: item.question, reason: profiled.reasons.join('; ') })
    }
  }
  own.push(...defineProfileFields(profiles, unknownIds))
  return { items: own.length === 0 ? items : insertOwn(items, own), switchedOff, profiles }
}

/** Profiles that a workspace can choose from: its own and the delivered ones. */
export function listProfiles({ profiles = [] }: Pick<CatalogueTemplate, 'profiles'>): readonly Profile[] {
  return [...DELIVERED_PROFILES, ...profiles]
}

function findProfiles(edition: CatalogueEdition) {
  const wanted = new Set(edition.profileIds ?? [])
  const profiles = listProfiles(edition)
    .filter(({ id }) => wanted.has(id))
    .sort((one, other) => (one.id < other.id ? -1 : 1))
  const known = new Set(profiles.map(({ id }) => id))
  return { profiles, unknownIds: [...wanted].filter((id) => !known.has(id)).sort() }
}

/** The very item where nothing changes: what compares editions need not look into it. */
function withChanges(item: ItemDefinition, changed: Partial<ItemDefinition>): ItemDefinition {
  return Object.keys(changed).length === 0 ? item : { ...item, ...changed }
}

function changeItem(item: ItemDefinition, change: ItemChange): ItemDefinition {
  return {
    ...item,
    question: change.question ?? item.question,
    prose: {
      ...(change.why === null ? {} : { why: change.why }),
      ...(change.howToCheck === null ? {} : { howToCheck: change.howToCheck }),
    },
    answeredBy: change.answeredBy ?? item.answeredBy,
    monotone: [],
  }
}

/** Own items stand at the end of their section. */
function insertOwn(items: readonly ItemDefinition[], own: readonly ItemDefinition[]): ItemDefinition[] {
  return ITEM_SECTIONS.flatMap((section) => [
    ...items.filter((item) => item.section === section),
    ...own.filter((item) => item.section === section),
  ])
}

function defineOwnItem(own: OwnItem): ItemDefinition {
  const title = own.question.replace(/[?.!\s]+$/, '')
  const common = {
    id: own.id,
    section: own.section,
    severity: own.severity,
    question: own.question,
    prose: { why: own.why, howToCheck: own.howToCheck },
    appliesTo: { needs: [], says: 'every design of this workspace' },
    limits: [],
    decidedWhen: own.decidedWhen,
    answeredBy: own.answeredBy,
    monotone: [],
    ...(own.onlyWithProfile === true ? { onlyWithProfile: true as const } : {}),
  }
  const { check, ground } = own
  if (check === undefined) {
    return defineItem({
      ...common,
      titles: { judgment: title },
      sourceKeys: [],
      restsOn: ALL_INPUTS,
      judgment: { evidence: own.evidence },
    })
  }
  return defineItem({
    ...common,
    titles: { meets: `${title}: yes`, fails: `${title}: no` },
    sourceKeys: ['workspaceRule'],
    restsOn: [check.field as InputPattern],
    check: (context) => checkOwn(context, check, ground),
  })
}

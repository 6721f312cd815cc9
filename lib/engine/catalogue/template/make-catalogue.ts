import { defineItem, type ItemDefinition, SECTIONS } from '../define-item'
import { ALL_INPUTS } from '../item-inputs'
import { USUAL_ITEMS } from '../items'
import type { CatalogueTemplate, OwnItem } from './schema'

/** An item that a workspace has taken out of its reviews, and on what ground. */
export interface SwitchedOffItem {
  readonly itemId: string
  readonly question: string
  readonly reason: string
}

export interface WorkspaceCatalogue {
  /** What a review goes through, in the order of sections: delivered items first, own ones after them. */
  readonly items: readonly ItemDefinition[]
  readonly switchedOff: readonly SwitchedOffItem[]
}

/** The delivered catalogue with a workspace's changes and its own items. */
export function makeCatalogue(template: CatalogueTemplate): WorkspaceCatalogue {
  const changes = new Map(template.itemChanges.map((change) => [change.itemId, change]))
  const own = template.ownItems.map(defineOwnItem)
  const items: ItemDefinition[] = []
  const switchedOff: SwitchedOffItem[] = []
  for (const item of USUAL_ITEMS) {
    const change = changes.get(item.id)
    if (change === undefined) items.push(item)
    else if (change.isOff) {
      switchedOff.push({ itemId: item.id, question: change.question ?? item.question, reason: change.reason })
    } else {
      items.push({
        ...item,
        question: change.question ?? item.question,
        prose: {
          ...(change.why === null ? {} : { why: change.why }),
          ...(change.howToCheck === null ? {} : { howToCheck: change.howToCheck }),
        },
        answeredBy: change.answeredBy ?? item.answeredBy,
        monotone: [],
      })
    }
  }
  return { items: own.length === 0 ? items : insertOwn(items, own), switchedOff }
}

/** Own items stand at the end of their section. */
function insertOwn(items: readonly ItemDefinition[], own: readonly ItemDefinition[]): ItemDefinition[] {
  return SECTIONS.flatMap((section) => [
    ...items.filter((item) => item.section === section),
    ...own.filter((item) => item.section === section),
  ])
}

function defineOwnItem(own: OwnItem): ItemDefinition {
  return defineItem({
    id: own.id,
    section: own.section,
    severity: own.severity,
    question: own.question,
    prose: { why: own.why, howToCheck: own.howToCheck },
    titles: { judgment: own.question.replace(/[?.!\s]+$/, '') },
    appliesTo: { needs: [], says: 'every design of this workspace' },
    limits: [],
    sourceKeys: [],
    restsOn: ALL_INPUTS,
    decidedWhen: own.decidedWhen,
    answeredBy: own.answeredBy,
    monotone: [],
    judgment: { evidence: own.evidence },
  })
}

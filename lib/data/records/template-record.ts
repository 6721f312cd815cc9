import 'server-only'
import {
  type CatalogueTemplate,
  catalogueTemplateSchema,
  DELIVERED_TEMPLATE,
  makeCatalogue,
  type WorkspaceCatalogue,
} from '@/lib/engine/catalogue'
import { hashJson, makeReviewItem, type ReviewItem, type ReviewTemplate } from '@/lib/review'
import type { TransactionClient } from '../store/client'

/** One version of the workspace's catalogue, ready for use. */
export interface TemplateRecord {
  /** 0 is the catalogue as delivered. */
  readonly version: number
  readonly content: CatalogueTemplate
  readonly catalogue: WorkspaceCatalogue
  /** What the review's rules need of the items. */
  readonly items: readonly ReviewItem[]
  readonly review: ReviewTemplate
}

/** @throws Error for a version that is not there: a revision refers to versions that were, and none is deleted */
export async function loadTemplate(tx: TransactionClient, version: number): Promise<TemplateRecord> {
  if (version === 0) return makeTemplateRecord(0, DELIVERED_TEMPLATE)
  const row = await tx.catalogueTemplate.findUniqueOrThrow({ where: { version } })
  return makeTemplateRecord(row.version, readTemplate(row.contentJson))
}

/** Several versions, each once. */
export async function loadTemplates(
  tx: TransactionClient,
  versions: readonly number[],
): Promise<ReadonlyMap<number, TemplateRecord>> {
  const stored = [...new Set(versions)].filter((version) => version !== 0)
  const rows = stored.length === 0 ? [] : await tx.catalogueTemplate.findMany({ where: { version: { in: stored } } })
  return new Map([
    [0, makeTemplateRecord(0, DELIVERED_TEMPLATE)],
    ...rows.map((row) => [row.version, makeTemplateRecord(row.version, readTemplate(row.contentJson))] as const),
  ])
}

export async function findLatestTemplateVersion(tx: TransactionClient): Promise<number> {
  const row = await tx.catalogueTemplate.findFirst({ orderBy: { version: 'desc' }, select: { version: true } })
  return row?.version ?? 0
}

export async function loadLatestTemplate(tx: TransactionClient): Promise<TemplateRecord> {
  return loadTemplate(tx, await findLatestTemplateVersion(tx))
}

export function readTemplate(contentJson: string): CatalogueTemplate {
  return catalogueTemplateSchema.parse(JSON.parse(contentJson))
}

function makeTemplateRecord(version: number, content: CatalogueTemplate): TemplateRecord {
  const catalogue = makeCatalogue(content)
  return {
    version,
    content,
    catalogue,
    items: catalogue.items.map(makeReviewItem),
    review: { version, contentHash: version === 0 ? '' : hashJson(content), switchedOff: catalogue.switchedOff },
  }
}

import 'server-only'
import { z } from 'zod'
import { readOnce, readStoredJson } from '@/lib/engine'
import {
  type CatalogueEdition,
  type CatalogueTemplate,
  catalogueTemplateSchema,
  DELIVERED_TEMPLATE,
  makeCatalogue,
  passTemplateOn,
  type WorkspaceCatalogue,
} from '@/lib/engine/catalogue'
import { hashJson, makeReviewItem, type ReviewItem, type ReviewTemplate } from '@/lib/review'
import type { TransactionClient } from '../store/client'

/** One version of the workspace's catalogue with the profiles laid over it, ready for use. */
export interface TemplateRecord {
  /** 0 is the catalogue as delivered. */
  readonly version: number
  /** Sorted; empty where no profile is followed. */
  readonly profileIds: readonly string[]
  readonly content: CatalogueEdition
  readonly catalogue: WorkspaceCatalogue
  /** What the review's rules need of the items. */
  readonly items: readonly ReviewItem[]
  readonly review: ReviewTemplate
}

/** What a revision goes by, as its row says it. */
export interface PinnedEdition {
  readonly templateVersion: number
  readonly profilesJson: string
}

/** @throws Error for a version that is not there: a revision refers to versions that were, and none is deleted */
export async function loadTemplate(
  tx: TransactionClient,
  version: number,
  profileIds: readonly string[] = [],
): Promise<TemplateRecord> {
  return makeTemplateRecord(version, await loadContent(tx, version), profileIds)
}

/** Those of several revisions, in their order; each version is read once. */
export async function loadTemplates(
  tx: TransactionClient,
  pinned: readonly PinnedEdition[],
): Promise<readonly TemplateRecord[]> {
  const versions = [...new Set(pinned.map(({ templateVersion }) => templateVersion))]
  const stored = versions.filter((version) => version !== 0)
  const rows = stored.length === 0 ? [] : await tx.catalogueTemplate.findMany({ where: { version: { in: stored } } })
  const contents = new Map([
    [0, DELIVERED_TEMPLATE],
    ...rows.map((row) => [row.version, readTemplate(row.contentJson)] as const),
  ])
  return pinned.map(({ templateVersion, profilesJson }) => {
    const content = contents.get(templateVersion)
    if (content === undefined) throw new Error(`there is no version ${templateVersion} of the catalogue`)
    return makeTemplateRecord(templateVersion, content, readProfileIds(profilesJson))
  })
}

export async function findLatestTemplateVersion(tx: TransactionClient): Promise<number> {
  const row = await tx.catalogueTemplate.findFirst({ orderBy: { version: 'desc' }, select: { version: true } })
  return row?.version ?? 0
}

export async function loadLatestTemplate(tx: TransactionClient): Promise<TemplateRecord> {
  return loadTemplate(tx, await findLatestTemplateVersion(tx))
}

async function loadContent(tx: TransactionClient, version: number): Promise<CatalogueTemplate> {
  if (version === 0) return DELIVERED_TEMPLATE
  const row = await tx.catalogueTemplate.findUniqueOrThrow({ where: { version } })
  return readTemplate(row.contentJson)
}

export const readTemplate: (contentJson: string) => CatalogueTemplate = readOnce((contentJson) =>
  catalogueTemplateSchema.parse(JSON.parse(contentJson)),
)

const profileIdsSchema = z.array(z.string())

/** Profiles of a project or a revision, as its row keeps them. */
export function readProfileIds(profilesJson: string): readonly string[] {
  return readStoredJson('profiles that are followed', profileIdsSchema, profilesJson)
}

/** In one order, so that two choices of the same profiles are the same text. */
export function writeProfileIds(profileIds: readonly string[]): string {
  return JSON.stringify([...new Set(profileIds)].sort())
}

/** A version never changes once it is stored, and every page of a revision asks for its own. */
const made = new WeakMap<CatalogueTemplate, Map<string, TemplateRecord>>()

function makeTemplateRecord(version: number, stored: CatalogueTemplate, profileIds: readonly string[]): TemplateRecord {
  const records = made.get(stored) ?? new Map<string, TemplateRecord>()
  made.set(stored, records)
  const key = `${version} ${writeProfileIds(profileIds)}`
  const record = records.get(key) ?? layProfiles(version, stored, profileIds)
  records.set(key, record)
  return record
}

/** @param stored  as it was stored: its hash is that of the stored content, whatever passes to successors of its items */
function layProfiles(version: number, stored: CatalogueTemplate, profileIds: readonly string[]): TemplateRecord {
  const hasProfiles = profileIds.length > 0
  const passed = passTemplateOn(stored)
  const content: CatalogueEdition = hasProfiles ? { ...passed, profileIds } : passed
  const catalogue = makeCatalogue(content)
  const { profiles, switchedOff } = catalogue
  return {
    version,
    profileIds,
    content,
    catalogue,
    items: catalogue.items.map(makeReviewItem),
    review: {
      version,
      // The delivered catalogue is what the engine's version stands for; what a profile holds is signed with it.
      contentHash: hasProfiles ? hashJson({ content, profiles }) : version === 0 ? '' : hashJson(stored),
      switchedOff,
      ...(hasProfiles ? { profiles: describeProfiles(profileIds, catalogue) } : {}),
    },
  }
}

/** By name; one that neither the program nor this version of the catalogue has is called by its id. */
function describeProfiles(profileIds: readonly string[], { profiles }: WorkspaceCatalogue) {
  return profileIds.map((id) => {
    const profile = profiles.find((candidate) => candidate.id === id)
    const requiredSignatures = profile?.requiredSignatures
    return { id, name: profile?.name ?? id, ...(requiredSignatures == null ? {} : { requiredSignatures }) }
  })
}

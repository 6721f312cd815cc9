import 'server-only'
import {
  buildSignedContent,
  canonicalJson,
  hashSubstance,
  listLiveSignatures,
  type ReviewSnapshot,
  readSignedContent,
  sha256Hex,
} from '@/lib/review'
import type { LoadedRevision } from './loaded-revision'

interface SignatureRow {
  readonly contentHash: string
  readonly contentJson: string
}

/** Content is kept under its hash and never changes, so what it binds is read once; so many are remembered. */
const REMEMBERED = 200
const substances = new Map<string, string>()

/** What the content binds that is stored with a signature. */
export function readSubstanceHash({ contentJson }: SignatureRow): string {
  const key = sha256Hex(contentJson)
  const known = substances.get(key)
  if (known !== undefined) return known
  const found = hashSubstance(readSignedContent(contentJson))
  if (substances.size >= REMEMBERED) substances.clear()
  substances.set(key, found)
  return found
}

/**
 * What a person signs, and what is released: the content that a standing signature is stored with, so that all of them cover the same bytes; where
 * none stands, the present content.
 */
export function getStandingContent({ record }: LoadedRevision, snapshot: ReviewSnapshot): SignatureRow {
  const live = listLiveSignatures(snapshot).at(-1)
  const row = record.signatures.find(({ id }) => id === live?.id)
  if (row !== undefined) return { contentHash: row.contentHash, contentJson: row.contentJson }
  const contentJson = canonicalJson(buildSignedContent(snapshot))
  return { contentJson, contentHash: sha256Hex(contentJson) }
}

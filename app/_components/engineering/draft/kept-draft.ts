import { z } from 'zod'
import { type Design, parseDesign } from '@/lib/engine'

/**
 * Unsaved edits survive a reload or a visit to another page of the same browser tab. They are only offered again, never
 * taken up silently.
 */
const PREFIX = 'bendworthy-draft:'

interface KeptDraft {
  readonly seenVersion: number
  readonly design: Design
}

const keptSchema = z.object({ seenVersion: z.number(), design: z.unknown() })

export function keepDraft(revisionId: string, draft: KeptDraft): void {
  try {
    window.sessionStorage.setItem(PREFIX + revisionId, JSON.stringify(draft))
  } catch {
    // Storage may be full or switched off: the page itself still holds the edits, and leaving it asks first.
  }
}

export function dropKeptDraft(revisionId: string): void {
  try {
    window.sessionStorage.removeItem(PREFIX + revisionId)
  } catch {
    // Switched-off storage holds nothing to remove.
  }
}

/** Null where nothing is kept, or what is kept cannot be read as a design. */
export function findKeptDraft(revisionId: string): KeptDraft | null {
  try {
    const text = window.sessionStorage.getItem(PREFIX + revisionId)
    if (text === null) return null
    const kept = keptSchema.parse(JSON.parse(text))
    const parsed = parseDesign(kept.design)
    return parsed.ok ? { seenVersion: kept.seenVersion, design: parsed.value } : null
  } catch {
    return null
  }
}

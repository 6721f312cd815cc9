import 'server-only'
import { type Design, parseDesign, parseDesignText } from '@/lib/engine'
import type { Issue, Result } from '@/lib/engine/results'
import { canonicalJson, sha256Hex, stampRevision } from '@/lib/review'
import { refuseInvalid } from '../store/errors'

export interface CheckedDesign {
  readonly design: Design
  /** As stored: the canonical form, whose SHA-256 is the hash. */
  readonly designJson: string
  readonly designHash: string
}

/** A design whose shape the caller's schema has checked: checks the references between its parts. */
export function checkDesign(input: unknown): CheckedDesign {
  return store(parseDesign(input), 'The design cannot be saved in this state.')
}

/** The text of a design document. */
export function checkDesignText(text: string): CheckedDesign {
  return store(parseDesignText(text), 'The file cannot be read as a design document.')
}

/** The same design under the label of its revision. */
export function stampDesign(checked: CheckedDesign, label: string, copiedLabel: string | null = null): CheckedDesign {
  const stamped = stampRevision(checked.design, label, copiedLabel)
  return stamped === checked.design ? checked : checkDesign(stamped)
}

function store(parsed: Result<Design>, message: string): CheckedDesign {
  if (!parsed.ok) refuseInvalid(parsed.issues.map(inDesign), message)
  try {
    const designJson = canonicalJson(parsed.value)
    return { design: parsed.value, designJson, designHash: sha256Hex(designJson) }
  } catch (error) {
    if (!(error instanceof TypeError)) throw error
    refuseInvalid([{ code: 'no-canonical-form', path: ['design'], message: error.message }], message)
  }
}

function inDesign(issue: Issue): Issue {
  return { ...issue, path: ['design', ...issue.path] }
}

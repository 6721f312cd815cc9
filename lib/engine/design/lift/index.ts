import { DESIGN_FORMAT, DESIGN_FORMAT_VERSION, type Design } from '../design'
import { liftFrom1 } from './from-1'
import { isObject, type JsonObject } from './json'

/** One step for each version that was ever stored: from it to the next. */
const STEPS: ReadonlyMap<number, (document: JsonObject) => JsonObject> = new Map([[1, liftFrom1]])

/**
 * A design document of any earlier format in today's shape. What was typed stays; what the older format could not say becomes "not known yet",
 * or what the older format meant by it. Anything else is handed back as it came, for the schema to refuse.
 *
 * @returns a new document where a step was taken; `input` itself otherwise
 */
export function liftDesign(input: unknown): unknown {
  if (!isObject(input) || input.format !== DESIGN_FORMAT) return input
  let document = input
  for (;;) {
    const version = document.formatVersion
    const step = typeof version === 'number' && version < DESIGN_FORMAT_VERSION ? STEPS.get(version) : undefined
    if (step === undefined) return document
    document = step(document)
  }
}

/**
 * Reads a design that this program stored: checked when it was written, so only its shape is brought up to date.
 * Its hash belongs to the text as stored, not to what this returns.
 */
export function readStoredDesign(json: string): Design {
  return liftDesign(JSON.parse(json)) as Design
}

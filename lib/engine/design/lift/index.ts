import { parseStoredJson, readOnce, requireStoredShape, StoredDocumentError } from '../../results'
import { DESIGN_FORMAT, DESIGN_FORMAT_VERSION, type Design, designSchema } from '../design'
import { liftFrom1 } from './from-1'
import { liftFrom2 } from './from-2'
import { liftFrom3 } from './from-3'
import { liftFrom4 } from './from-4'
import { liftFrom5 } from './from-5'
import { liftFrom6 } from './from-6'
import { changeAt, isObject, type JsonObject } from './json'

/** One step for each version that was ever stored: from it to the next. */
const STEPS: ReadonlyMap<number, (document: JsonObject) => JsonObject> = new Map([
  [1, liftFrom1],
  [2, liftFrom2],
  [3, liftFrom3],
  [4, liftFrom4],
  [5, liftFrom5],
  [6, liftFrom6],
])

/**
 * A design document of any earlier format in today's shape. What was typed stays; what the older format could not say becomes "not known yet",
 * or what the older format meant by it. Anything else is handed back as it came, for the schema to refuse.
 *
 * @returns a new document where a step was taken or a field filled in; `input` itself otherwise
 */
export function liftDesign(input: unknown): unknown {
  if (!isObject(input) || input.format !== DESIGN_FORMAT) return input
  let document = input
  for (;;) {
    const version = document.formatVersion
    const step = typeof version === 'number' && version < DESIGN_FORMAT_VERSION ? STEPS.get(version) : undefined
    if (step === undefined) return version === DESIGN_FORMAT_VERSION ? fillOptional(document) : document
    document = step(document)
  }
}

/** The two fields that a document may leave out: nothing is assumed, and no outline is known. */
function fillOptional(document: JsonObject): JsonObject {
  const filled = 'assumed' in document ? document : { ...document, assumed: [] }
  const { features } = filled
  if (!isObject(features) || 'outline' in features) return filled
  return changeAt(filled, 'features', (inner) => ({ ...inner, outline: null }))
}

const STORED_DESIGN = 'a stored design'

/**
 * Reads a design that this program stored: its shape is brought up to date and checked, its values were when it was written.
 * Its hash belongs to the text as stored, not to what this returns.
 *
 * @throws StoredDocumentError for what is damaged, or of a later format
 */
export const readStoredDesign = (json: string): Design => readStoredDesignWithSource(json).design

/** The same, beside the document in the format that it was stored in. */
export const readStoredDesignWithSource: (json: string) => { readonly design: Design; readonly storedDesign: unknown } =
  readOnce((json) => {
    const storedDesign = parseStoredJson(STORED_DESIGN, json)
    return { storedDesign, design: readStoredDesignDocument(storedDesign) }
  })

/** The same, of a document inside another one that was stored. */
export function readStoredDesignDocument(document: unknown): Design {
  if (
    isObject(document) &&
    typeof document.formatVersion === 'number' &&
    document.formatVersion > DESIGN_FORMAT_VERSION
  ) {
    throw new StoredDocumentError(
      `${STORED_DESIGN} is of format ${document.formatVersion}; this program reads up to format ${DESIGN_FORMAT_VERSION}`,
    )
  }
  const lifted = liftDesign(document)
  requireStoredShape(STORED_DESIGN, designSchema, lifted)
  return lifted
}

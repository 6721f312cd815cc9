import {
  PDFArray,
  PDFDict,
  PDFDocument,
  type PDFName,
  type PDFNumber,
  type PDFObject,
  PDFRawStream,
  PDFRef,
  PDFStream,
} from '@cantoo/pdf-lib'

/** A PDF as a general library reads it. */
export interface ReadPdf {
  readonly bytes: Uint8Array
  /** One character for each byte. */
  readonly text: string
  /** The same without what streams hold. */
  readonly bodies: string
  readonly document: PDFDocument
  readonly catalog: PDFDict
  readonly pages: readonly PDFDict[]
  readonly objects: readonly (readonly [string, PDFObject])[]
  /** Every dictionary, wherever it stands, that of a stream too. */
  readonly dictionaries: readonly (readonly [string, PDFDict])[]
  readonly streams: readonly (readonly [string, PDFRawStream])[]
  readonly follow: (object: PDFObject | undefined) => PDFObject | undefined
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false, ignoreEncryption: true })
  const { context } = document
  const objects = context.enumerateIndirectObjects().map(([ref, object]) => [ref.toString(), object] as const)
  const dictionaries = objects.flatMap(([name, object]) => listDictionaries(object).map((one) => [name, one] as const))
  const streams = objects.flatMap(([name, object]) => (object instanceof PDFRawStream ? [[name, object] as const] : []))
  const text = new TextDecoder('latin1').decode(bytes)
  return {
    bytes,
    text,
    bodies: text.replaceAll(/\bstream\r?\n[\s\S]*?\bendstream\b/g, ''),
    document,
    catalog: document.catalog,
    pages: document.getPages().map((page) => page.node),
    objects,
    dictionaries,
    streams,
    follow: (object) => (object instanceof PDFRef ? context.lookup(object) : object),
  }
}

function listDictionaries(object: PDFObject): PDFDict[] {
  if (object instanceof PDFStream) return listDictionaries(object.dict)
  if (object instanceof PDFArray) return object.asArray().flatMap(listDictionaries)
  if (object instanceof PDFDict) return [object, ...object.values().flatMap(listDictionaries)]
  return []
}

type Held = PDFDict | undefined

/** What a dictionary holds under a key, references followed; as text where it is a name or number. */
export function reader({ follow }: Pick<ReadPdf, 'follow'>) {
  const find = (holder: Held, key: string): PDFObject | undefined => {
    const found = holder?.entries().find(([name]) => name.asString() === `/${key}`)
    return follow(found?.[1])
  }
  const dictOf = (holder: Held, key: string): PDFDict | undefined => {
    const found = find(holder, key)
    return found instanceof PDFStream ? found.dict : found instanceof PDFDict ? found : undefined
  }
  return {
    find,
    dictOf,
    nameOf: (holder: Held, key: string): string => (find(holder, key) as PDFName | undefined)?.toString() ?? '',
    numberOf: (holder: Held, key: string): number | undefined =>
      (find(holder, key) as PDFNumber | undefined)?.asNumber?.(),
    streamOf: (holder: Held, key: string): PDFRawStream | undefined => {
      const found = find(holder, key)
      return found instanceof PDFRawStream ? found : undefined
    },
    listOf: (holder: Held, key: string): PDFObject[] => {
      const found = find(holder, key)
      return found instanceof PDFArray ? found.asArray().flatMap((one) => follow(one) ?? []) : []
    },
    keysOf: (holder: Held): string[] => holder?.keys().map((name) => name.asString().slice(1)) ?? [],
  }
}

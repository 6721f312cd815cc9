import { PDFDict } from '@cantoo/pdf-lib'
import { type ReadPdf, reader } from './document'

/**
 * Structure, metadata and colour of ISO 19005-2:2011, clauses from memory.
 * @returns one sentence for each fault, with the clause
 */
export function findFileFaults(pdf: ReadPdf): string[] {
  return [
    ...findHeaderFaults(pdf),
    ...findCrossReferenceFaults(pdf),
    ...findStreamFaults(pdf),
    ...findSizeFaults(pdf),
    ...findIntentFaults(pdf),
    ...findMetadataFaults(pdf),
    ...findForbiddenFaults(pdf),
  ]
}

function findHeaderFaults({ text }: ReadPdf): string[] {
  const trailer = text.slice(text.lastIndexOf('\ntrailer'))
  return [
    ...(/^%PDF-1\.[0-7]\r?\n%[\x80-\xff]{4}/.test(text) ? [] : ['6.1.2: no header with a comment of four high bytes']),
    ...(/%%EOF\r?\n?$/.test(text) ? [] : ['6.1.3: something after the end of the file']),
    ...(/\/ID \[\s*<[0-9a-f]{2,}>\s*<[0-9a-f]{2,}>\s*\]/i.test(trailer) ? [] : ['6.1.3: no identifier of the file']),
    ...(/\/Encrypt\b/.test(trailer) ? ['6.1.3: the file is encrypted'] : []),
  ]
}

/** 6.1.4: every entry of the table leads to the object that it names. */
function findCrossReferenceFaults({ text }: ReadPdf): string[] {
  const start = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(text)?.[1] ?? Number.NaN)
  const table = /^xref\r?\n(\d+) (\d+)\r?\n((?:\d{10} \d{5} [nf][ \r]\n)+)trailer/.exec(text.slice(start))
  if (table === null) return ['6.1.4: no cross-reference table where the file says that it is']
  const [, first = '', count = '', rows = ''] = table
  const entries = rows.trimEnd().split('\n')
  if (entries.length !== Number(count)) return ['6.1.4: the cross-reference table has another length than it says']
  return entries.flatMap((entry, at) => {
    const id = Number(first) + at
    const [offset = '', generation = '', kind = ''] = entry.trim().split(' ')
    const isThere =
      kind === 'f' || text.slice(Number(offset)).startsWith(`${id} ${Number.parseInt(generation, 10)} obj`)
    return isThere ? [] : [`6.1.4: object ${id} is not where the table says`]
  })
}

function findStreamFaults(pdf: ReadPdf): string[] {
  const { find, keysOf } = reader(pdf)
  const external = pdf.streams.flatMap(([name, { dict }]) =>
    keysOf(dict).some((key) => ['F', 'FFilter', 'FDecodeParms'].includes(key))
      ? [`6.1.7.1: stream ${name} lies outside of the file`]
      : [],
  )
  const filters = pdf.streams.flatMap(([name, { dict }]) =>
    /\/(LZWDecode|Crypt)\b/.test(find(dict, 'Filter')?.toString() ?? '')
      ? [`6.1.7.2: stream ${name} is compressed by LZW, or encrypted`]
      : [],
  )
  // What stands between the keywords is as long as the dictionary says: the library would mend it in silence.
  const lengths = [...pdf.text.matchAll(/\/Length (\d+)\s*(?:\/[^>]*)?>>\s*stream\r?\n/g)].flatMap((match) => {
    const end = match.index + match[0].length + Number(match[1])
    return /^\r?\n?endstream/.test(pdf.text.slice(end, end + 12)) ? [] : [`6.1.7.1: a stream is not ${match[1]} bytes`]
  })
  return [...external, ...filters, ...lengths]
}

/** 6.1.13: what a conforming reader must be able to hold. */
function findSizeFaults(pdf: ReadPdf): string[] {
  const { listOf } = reader(pdf)
  const faults = pdf.objects.length > 8_388_607 ? ['6.1.13: too many objects'] : []
  for (const page of pdf.pages) {
    const [left = 0, low = 0, right = 0, high = 0] = listOf(page, 'MediaBox').map((side) => Number(side.toString()))
    for (const side of [right - left, high - low]) {
      if (side < 3 || side > 14_400) faults.push(`6.1.13: a page is ${side} units long`)
    }
  }
  for (const [, number = ''] of pdf.bodies.matchAll(/[\s[](-?\d{10,})[\s\]]/g)) {
    if (Math.abs(Number(number)) > 2_147_483_647) faults.push(`6.1.13: the integer ${number} is too large`)
  }
  for (const [name] of pdf.bodies.matchAll(/\/[^\s()<>[\]{}/%]{128,}/g)) faults.push(`6.1.13: the name ${name}`)
  return faults
}

/** 6.2.3: one output intent with a profile, which says what the colours mean. */
function findIntentFaults(pdf: ReadPdf): string[] {
  const { listOf, nameOf, streamOf, numberOf } = reader(pdf)
  const intents = listOf(pdf.catalog, 'OutputIntents').filter((one) => one instanceof PDFDict)
  const [intent] = intents.filter((one) => nameOf(one, 'S') === '/GTS_PDFA1')
  if (intents.length !== 1 || intent === undefined) return ['6.2.3: there is not one output intent of archives']
  const profile = streamOf(intent, 'DestOutputProfile')
  if (profile === undefined) return ['6.2.3: the output intent has no profile']
  const icc = Buffer.from(profile.getContents())
  const [major, kind, space, mark] = [
    icc[8],
    icc.toString('latin1', 12, 16),
    icc.toString('latin1', 16, 20),
    icc.toString('latin1', 36, 40),
  ]
  return [
    ...(mark === 'acsp' && icc.readUInt32BE(0) === icc.length ? [] : ['6.2.3: the profile is no ICC profile']),
    ...((major ?? 9) <= 4 ? [] : ['6.2.3: the profile is of a later version than 4']),
    ...(kind === 'mntr' || kind === 'prtr' ? [] : [`6.2.3: the profile is of the class ${kind}`]),
    ...(space === 'RGB ' && numberOf(profile.dict, 'N') === 3
      ? []
      : ['6.2.4.3: the profile is not of the colours used']),
  ]
}

const NAMESPACES = [
  'http://www.w3.org/1999/02/22-rdf-syntax-ns#',
  'http://purl.org/dc/elements/1.1/',
  'http://ns.adobe.com/xap/1.0/',
  'http://ns.adobe.com/xap/1.0/mm/',
  'http://ns.adobe.com/pdf/1.3/',
  'http://www.aiim.org/pdfa/ns/id/',
  'adobe:ns:meta/',
]

/** 6.6.2 to 6.6.4: metadata that say what the file is, in the predefined schemas alone, and what the information dictionary says. */
function findMetadataFaults(pdf: ReadPdf): string[] {
  const { streamOf, nameOf } = reader(pdf)
  const stream = streamOf(pdf.catalog, 'Metadata')
  if (stream === undefined || nameOf(stream.dict, 'Subtype') !== '/XML') return ['6.6.2.1: the file has no metadata']
  const xmp = new TextDecoder('utf-8', { fatal: true }).decode(stream.getContents())
  const faults = /<\?xpacket begin=[^?]*\b(bytes|encoding)=/.test(xmp) ? ['6.6.2.1: the packet names its bytes'] : []
  const statedAs = (name: string) =>
    new RegExp(`<${name}>([^<]*)</${name}>|\\b${name}="([^"]*)"`)
      .exec(xmp)
      ?.slice(1)
      .find((one) => one !== undefined)
  if (statedAs('pdfaid:part') !== '2' || statedAs('pdfaid:conformance') !== 'B') {
    faults.push('6.6.4: the metadata do not claim part 2, level B')
  }
  for (const [, space = ''] of xmp.matchAll(/xmlns:\w+="([^"]*)"/g)) {
    if (!NAMESPACES.includes(space)) faults.push(`6.6.2.3: ${space} is no predefined schema, and is not described`)
  }
  const { document } = pdf
  const created = statedAs('xmp:CreateDate')
  if (created === undefined || Date.parse(created) !== document.getCreationDate()?.getTime()) {
    faults.push('6.6.3: metadata and information differ in the date')
  }
  const title = /<dc:title>[\s\S]*?<rdf:li[^>]*>([^<]*)</.exec(xmp)?.[1]
  const read = (text: string | undefined) =>
    text
      ?.replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&apos;', "'")
      .replaceAll('&amp;', '&')
  if (read(title) !== document.getTitle()) faults.push('6.6.3: metadata and information differ in the title')
  return faults
}

/** Catalogue entries that may do something, hide something or carry something along: 6.1.12, 6.4, 6.5, 6.8 to 6.11. */
function findForbiddenFaults(pdf: ReadPdf): string[] {
  const { dictOf, keysOf, nameOf } = reader(pdf)
  const faults: string[] = []
  for (const key of ['AA', 'OCProperties', 'AcroForm', 'Requirements', 'Collection', 'Perms']) {
    if (keysOf(pdf.catalog).includes(key)) faults.push(`6.4 to 6.11: the catalogue has ${key}`)
  }
  const names = keysOf(dictOf(pdf.catalog, 'Names'))
  for (const key of ['EmbeddedFiles', 'JavaScript', 'AlternatePresentations']) {
    if (names.includes(key)) faults.push(`6.5, 6.8, 6.10: the file carries ${key}`)
  }
  for (const page of pdf.pages) if (keysOf(page).includes('AA')) faults.push('6.5.2: a page acts by itself')
  for (const [name, dictionary] of pdf.dictionaries) {
    if (['/Filespec', '/EmbeddedFile'].includes(nameOf(dictionary, 'Type'))) faults.push(`6.8: ${name} is a file`)
    const action = nameOf(dictionary, 'S')
    if (keysOf(dictionary).includes('JS') || FORBIDDEN_ACTIONS.includes(action)) faults.push(`6.5.1: ${name} ${action}`)
  }
  return faults
}

const FORBIDDEN_ACTIONS = [
  'Launch',
  'Sound',
  'Movie',
  'ResetForm',
  'ImportData',
  'Hide',
  'SetOCGState',
  'Rendition',
  'Trans',
  'GoTo3DView',
  'JavaScript',
].map((name) => `/${name}`)

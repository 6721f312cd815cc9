import { PDFDict } from '@cantoo/pdf-lib'
import { type Operation, readOperations } from './content'
import { type ReadPdf, reader } from './document'

/** Graphics and annotations of ISO 19005-2:2011, clauses from memory. */
export function findPageFaults(pdf: ReadPdf): string[] {
  return [...findColourFaults(pdf), ...findStateFaults(pdf), ...findPictureFaults(pdf), ...findAnnotationFaults(pdf)]
}

export interface Drawn {
  readonly resources: PDFDict | undefined
  readonly operations: readonly Operation[]
}

/** Content of pages and of the forms that they draw. */
export function listDrawn(pdf: ReadPdf): Drawn[] {
  const { dictOf, find, listOf, streamOf, nameOf } = reader(pdf)
  const pages = pdf.pages.map((page) => {
    const only = streamOf(page, 'Contents')
    const parts = only === undefined ? pdf.streams.filter(([, one]) => listOf(page, 'Contents').includes(one)) : []
    const streams = only === undefined ? parts.map(([, one]) => one) : [only]
    return {
      resources: dictOf(page, 'Resources') ?? (find(page, 'Resources') as PDFDict | undefined),
      operations: streams.flatMap((stream) => readOperations(stream.getContents())),
    }
  })
  const forms = pdf.streams
    .filter(([, { dict }]) => nameOf(dict, 'Subtype') === '/Form')
    .map(([, stream]) => ({
      resources: dictOf(stream.dict, 'Resources'),
      operations: readOperations(stream.getContents()),
    }))
  return [...pages, ...forms]
}

const OPERATORS = new Set(
  (
    'b B b* B* BDC BMC BT BX c cm CS cs d d0 d1 Do DP EMC ET EX f F f* G g gs h i J j K k l m M MP n q Q re RG rg ri s S ' +
    'SC sc SCN scn sh T* Tc Td TD Tf Tj TJ TL Tm Tr Ts Tw Tz v w W W* y \' "'
  ).split(' '),
)

/** 6.2.2 operators that exist; 6.2.4.3 no colours that the output intent does not explain; 6.1.13 states nested 28 deep at most. */
function findColourFaults(pdf: ReadPdf): string[] {
  const faults = new Set<string>()
  for (const { operations } of listDrawn(pdf)) {
    let depth = 0
    for (const { operator, operands } of operations) {
      if (!OPERATORS.has(operator)) faults.add(`6.2.2: the operator ${operator}`)
      if (operator === 'k' || operator === 'K' || operands.includes('/DeviceCMYK')) faults.add('6.2.4.3: CMYK colours')
      if (operator === 'q') depth += 1
      if (operator === 'Q') depth -= 1
      if (depth > 28) faults.add('6.1.13: graphics states are nested too deep')
    }
    if (depth !== 0) faults.add('6.2.2: graphics states are not closed')
  }
  if (pdf.dictionaries.some(([, one]) => one.toString().includes('/DeviceCMYK'))) faults.add('6.2.4.3: CMYK colours')
  return [...faults]
}

const BLENDS = [
  'Normal',
  'Compatible',
  'Multiply',
  'Screen',
  'Overlay',
  'Darken',
  'Lighten',
  'ColorDodge',
  'ColorBurn',
  'HardLight',
  'SoftLight',
  'Difference',
  'Exclusion',
  'Hue',
  'Saturation',
  'Color',
  'Luminosity',
].map((name) => `/${name}`)

/** 6.2.5 graphics states, 6.2.10 transparency: what is transparent on a page has a space in which it is mixed. */
function findStateFaults(pdf: ReadPdf): string[] {
  const { find, keysOf, nameOf, numberOf, dictOf, listOf } = reader(pdf)
  const faults: string[] = []
  const states = pdf.dictionaries.filter(
    ([, one]) =>
      nameOf(one, 'Type') === '/ExtGState' || keysOf(one).some((key) => ['ca', 'CA', 'SMask', 'BM'].includes(key)),
  )
  for (const [name, state] of states) {
    const keys = keysOf(state)
    if (keys.includes('TR') || keys.includes('HTP')) faults.push(`6.2.5: ${name} has a transfer function or halftone`)
    if (keys.includes('TR2') && nameOf(state, 'TR2') !== '/Default')
      faults.push(`6.2.5: ${name} has a transfer function`)
    if (keys.includes('BM') && !BLENDS.includes(nameOf(state, 'BM')))
      faults.push(`6.2.10: ${name} blends in a way of its own`)
  }
  const isTransparent = states.some(
    ([, one]) =>
      (numberOf(one, 'ca') ?? 1) < 1 ||
      (numberOf(one, 'CA') ?? 1) < 1 ||
      (find(one, 'SMask')?.toString() ?? '/None') !== '/None',
  )
  const hasIntent = listOf(pdf.catalog, 'OutputIntents').length > 0
  const isMixed = pdf.pages.every((page) => find(dictOf(page, 'Group'), 'CS') !== undefined)
  if (isTransparent && !hasIntent && !isMixed) faults.push('6.2.10: transparency without a space in which it is mixed')
  return faults
}

/** 6.2.8 images, 6.2.9 forms, with nothing that stands in for something else elsewhere. */
function findPictureFaults(pdf: ReadPdf): string[] {
  const { keysOf, nameOf, find } = reader(pdf)
  return pdf.streams.flatMap(([name, { dict }]) => {
    const kind = nameOf(dict, 'Subtype')
    const keys = keysOf(dict)
    if (kind === '/PS' || nameOf(dict, 'Subtype2') === '/PS') return [`6.2.9: ${name} is a program`]
    if (kind === '/Form' && keys.some((key) => ['OPI', 'PS', 'Ref'].includes(key)))
      return [`6.2.9: ${name} refers elsewhere`]
    if (kind !== '/Image') return []
    if (keys.some((key) => ['OPI', 'Alternates'].includes(key))) return [`6.2.8: ${name} has an alternate`]
    return find(dict, 'Interpolate')?.toString() === 'true' ? [`6.2.8: ${name} is interpolated`] : []
  })
}

const [INVISIBLE, HIDDEN, PRINT, NO_VIEW, TOGGLE] = [1, 2, 4, 32, 256]

/** 6.3: annotations of permitted kinds that print and are never hidden; what a picture has to show is in the file. */
function findAnnotationFaults(pdf: ReadPdf): string[] {
  const { listOf, nameOf, numberOf, keysOf } = reader(pdf)
  const annotations = pdf.pages.flatMap((page) => listOf(page, 'Annots').filter((one) => one instanceof PDFDict))
  return annotations.flatMap((annotation) => {
    const kind = nameOf(annotation, 'Subtype')
    const flags = numberOf(annotation, 'F') ?? 0
    return [
      ...(['/3D', '/Sound', '/Screen', '/Movie', '/FileAttachment', ''].includes(kind)
        ? [`6.3.1: an annotation ${kind}`]
        : []),
      ...((flags & PRINT) === 0 ? [`6.3.2: an annotation ${kind} does not print`] : []),
      ...((flags & (INVISIBLE | HIDDEN | NO_VIEW | TOGGLE)) === 0 ? [] : [`6.3.2: an annotation ${kind} is hidden`]),
      ...(kind === '/Link' || kind === '/Popup' || keysOf(annotation).includes('AP')
        ? []
        : [`6.3.3: an annotation ${kind} has no appearance`]),
    ]
  })
}

/** Structure of a tagged PDF that our writer wrote (uncompressed, one object after another), read back for tests. */
export interface StructureElement {
  readonly type: string
  readonly alt: string
  readonly scope: string
  readonly colSpan: number
  readonly children: readonly StructureElement[]
  /** `page object / number` of each piece of marked content. */
  readonly pieces: readonly string[]
}

export interface MarkedPage {
  /** Numbers of marked content on the page. */
  readonly numbers: readonly number[]
  /** Painting and text operators outside of any mark. */
  readonly unmarked: readonly string[]
}

type Objects = ReadonlyMap<string, string>

function readObjects(bytes: Uint8Array): Objects {
  const text = new TextDecoder('latin1').decode(bytes)
  return new Map([...text.matchAll(/(\d+) 0 obj\b([\s\S]*?)\bendobj/g)].map(([, id = '', body = '']) => [id, body]))
}

const decodeText = (literal: string): string => {
  const raw = literal
    .replaceAll(/\\([()\\])/g, '$1')
    .replaceAll(/\\r/g, '\r')
    .replaceAll(/\\n/g, '\n')
  if (!raw.startsWith('\u00fe\u00ff')) return raw
  const codes = [...raw.slice(2)].map((character) => character.charCodeAt(0))
  return String.fromCharCode(...codes.flatMap((high, at) => (at % 2 === 0 ? [high * 256 + (codes[at + 1] ?? 0)] : [])))
}

export function readStructure(bytes: Uint8Array): {
  readonly root: StructureElement
  readonly pages: ReadonlyMap<string, MarkedPage>
} {
  const objects = readObjects(bytes)
  const rootId = [...objects.values()]
    .map((body) => /\/StructTreeRoot (\d+) 0 R/.exec(body)?.[1])
    .find((id) => id !== undefined)
  const tree = objects.get(rootId ?? '') ?? ''
  const first = /\/K \[(\d+) 0 R\]/.exec(tree)?.[1] ?? ''
  return { root: readElement(first, objects), pages: readPages(objects) }
}

function readElement(id: string, objects: Objects): StructureElement {
  const body = objects.get(id) ?? ''
  const ownPage = /\/Pg (\d+) 0 R/.exec(body.replaceAll(/\/K \[[\s\S]*?\]\n/g, ''))?.[1] ?? ''
  const kids = /\/K \[([\s\S]*?)\]\n/.exec(body)?.[1] ?? ''
  const children: StructureElement[] = []
  const pieces: string[] = []
  for (const [whole, dictionary, kid, number] of kids.matchAll(/<<([\s\S]*?)>>|(\d+) 0 R|(\d+)/g)) {
    if (dictionary !== undefined) {
      const page = /\/Pg (\d+) 0 R/.exec(dictionary)?.[1] ?? ''
      pieces.push(`${page}/${/\/MCID (\d+)/.exec(whole)?.[1] ?? ''}`)
    } else if (kid !== undefined) children.push(readElement(kid, objects))
    else pieces.push(`${ownPage}/${number ?? ''}`)
  }
  return {
    type: /\/S \/(\w+)/.exec(body)?.[1] ?? '',
    alt: decodeText(/\/Alt \(((?:\\[\s\S]|[^\\)])*)\)/.exec(body)?.[1] ?? ''),
    scope: /\/Scope \/(\w+)/.exec(body)?.[1] ?? '',
    colSpan: Number(/\/ColSpan (\d+)/.exec(body)?.[1] ?? 1),
    children,
    pieces,
  }
}

function readPages(objects: Objects): Map<string, MarkedPage> {
  const pages = new Map<string, MarkedPage>()
  for (const [id, body] of objects) {
    const contents = /\/Type \/Page\b[\s\S]*?\/Contents (\d+) 0 R/.exec(body)?.[1]
    if (contents !== undefined) pages.set(id, readMarks(objects.get(contents) ?? ''))
  }
  return pages
}

function readMarks(stream: string): MarkedPage {
  const numbers: number[] = []
  const unmarked: string[] = []
  let depth = 0
  const lines = stream.replaceAll(
    /<<\s*([^<>]*?)\s*>> BDC/g,
    (_all, inner: string) => `<< ${inner.replaceAll('\n', ' ')} >> BDC`,
  )
  for (const line of lines.split('\n')) {
    const operator = line.trim().split(' ').at(-1) ?? ''
    if (operator === 'BDC' || operator === 'BMC') {
      depth += 1
      const number = /\/MCID (\d+)/.exec(line)?.[1]
      if (number !== undefined) numbers.push(Number(number))
    } else if (operator === 'EMC') depth -= 1
    else if (depth === 0 && ['TJ', 'Tj', 'S', 'f', 'f*', 'B', 'B*', 's', 'Do'].includes(operator)) unmarked.push(line)
  }
  return { numbers, unmarked }
}

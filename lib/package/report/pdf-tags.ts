/** Standard structure types (ISO 32000-1:2008, 14.8.4) that our documents use. */
type TagType = 'Document' | 'H1' | 'H2' | 'H3' | 'P' | 'L' | 'LI' | 'LBody' | 'Table' | 'TR' | 'TH' | 'TD' | 'Figure'

/** One element of the tree that says what the marks on the pages are. `C` is a piece of marked content. */
export interface Tag<C = unknown> {
  readonly type: TagType
  /** Null at the root. */
  readonly parent: Tag<C> | null
  readonly children: Tag<C>[]
  /** Pieces of pages that belong to this very element, in the order in which they were drawn. */
  readonly pieces: C[]
  /** What a picture shows, for who does not see it. */
  readonly alt?: string
  readonly scope?: 'Row' | 'Column'
  readonly colSpan?: number
}

/** The key under which content carries its tag to the renderer. */
export const TAG_KEY = 'structureTag'

const HEADINGS: Readonly<Record<string, TagType>> = { title: 'H1', section: 'H2', subsection: 'H3' }

type Node = Readonly<Record<string, unknown>>

const isNode = (part: unknown): part is Node => typeof part === 'object' && part !== null && !Array.isArray(part)

function headingOf(node: Node): TagType | null {
  const styles = [node.style].flat().filter((style) => typeof style === 'string')
  return styles.map((style) => HEADINGS[style] ?? null).find((type) => type !== null) ?? null
}

/**
 * The same content in which each leaf carries its tag in the tree of structure. Tables have rows with heads, lists items,
 * pictures what they show; a picture without `alt` is decoration, and so is whatever carries no tag (rules, page heads and feet).
 */
export function tagContent(content: unknown): unknown {
  return tagBlock(content, { type: 'Document', parent: null, children: [], pieces: [] })
}

function addTag(parent: Tag, type: TagType, more: Partial<Pick<Tag, 'alt' | 'scope' | 'colSpan'>> = {}): Tag {
  const tag: Tag = { type, parent, children: [], pieces: [], ...more }
  parent.children.push(tag)
  return tag
}

function tagBlock(part: unknown, parent: Tag): unknown {
  if (Array.isArray(part)) return part.map((one) => tagBlock(one, parent))
  if (!isNode(part)) return { text: tagInlines(part, addTag(parent, 'P')) }
  if ('table' in part) return { ...part, table: tagTable(part.table as TableNode, parent) }
  if ('stack' in part) return { ...part, stack: tagBlock(part.stack, parent) }
  if ('columns' in part) return { ...part, columns: tagBlock(part.columns, parent) }
  if ('ul' in part) return { ...part, ul: tagList(part.ul as readonly unknown[], parent) }
  if ('svg' in part) return tagPicture(part, parent)
  if ('text' in part) return tagText(part, addTag(parent, headingOf(part) ?? 'P'))
  return part
}

function tagPicture(node: Node, parent: Tag): unknown {
  const { alt, ...drawn } = node
  return typeof alt === 'string' ? { ...drawn, [TAG_KEY]: addTag(parent, 'Figure', { alt }) } : drawn
}

function tagText(node: Node, tag: Tag): unknown {
  // Inherited by nothing: each run of text carries the tag itself.
  return { ...node, text: tagInlines(node.text, tag) }
}

function tagInlines(text: unknown, tag: Tag): unknown {
  if (Array.isArray(text)) return text.map((run) => tagRun(run, tag))
  return [tagRun(text, tag)]
}

function tagRun(run: unknown, tag: Tag): unknown {
  if (!isNode(run)) return { text: run, [TAG_KEY]: tag }
  return Array.isArray(run.text)
    ? { ...run, text: run.text.map((one) => tagRun(one, tag)) }
    : { ...run, [TAG_KEY]: tag }
}

function tagList(items: readonly unknown[], parent: Tag): unknown {
  const list = addTag(parent, 'L')
  return items.map((item) => tagWithin(item, addTag(addTag(list, 'LI'), 'LBody')))
}

/** Text stands in the cell or item itself; what is more than text, in elements of its own. */
function tagWithin(part: unknown, tag: Tag): unknown {
  if (!isNode(part)) return Array.isArray(part) ? tagBlock(part, tag) : { text: tagInlines(part, tag) }
  return 'text' in part ? tagText(part, tag) : tagBlock(part, tag)
}

interface TableNode {
  readonly headerRows?: number
  readonly widths?: readonly unknown[]
  readonly body: readonly (readonly unknown[])[]
}

function tagTable(table: TableNode, parent: Tag): unknown {
  const heads = table.headerRows ?? 0
  const isFrame = heads === 0 && table.body.every((row) => row.length === 1)
  if (isFrame) return { ...table, body: table.body.map((row) => row.map((cell) => tagBlock(cell, parent))) }
  // A heading that is set as a row, so that it stays with its table, is a heading and no row.
  const isHeadingRow = (row: readonly unknown[], at: number) =>
    at < heads && isNode(row[0]) && headingOf(row[0]) !== null
  const headings = new Map(
    table.body.flatMap((row, at) =>
      isHeadingRow(row, at) ? [[at, row.map((cell) => tagHeading(cell, parent))] as const] : [],
    ),
  )
  const tag = addTag(parent, 'Table')
  const areLabels = heads - headings.size === 0
  const body = table.body.map((row, at) => {
    const heading = headings.get(at)
    if (heading !== undefined) return heading
    const rowTag = addTag(tag, 'TR')
    return row.map((cell, column) => {
      const span = isNode(cell) && typeof cell.colSpan === 'number' ? { colSpan: cell.colSpan } : {}
      if (isSpanned(row, column)) return cell
      if (at < heads) return tagWithin(cell, addTag(rowTag, 'TH', { scope: 'Column', ...span }))
      const isLabel = areLabels && column === 0
      return tagWithin(cell, addTag(rowTag, isLabel ? 'TH' : 'TD', isLabel ? { scope: 'Row', ...span } : span))
    })
  })
  return { ...table, body }
}

const tagHeading = (cell: unknown, parent: Tag): unknown =>
  isNode(cell) && 'text' in cell ? tagText(cell, addTag(parent, headingOf(cell) ?? 'P')) : cell

/** Stands for a column that a cell before it reaches over. */
function isSpanned(row: readonly unknown[], column: number): boolean {
  return row.some(
    (cell, at) => isNode(cell) && typeof cell.colSpan === 'number' && at < column && column < at + cell.colSpan,
  )
}

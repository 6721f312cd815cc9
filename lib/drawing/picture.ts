/** One SVG element: tag, attributes in SVG spelling, children. Nothing here knows of a browser. */
export interface DrawingNode {
  readonly tag: string
  readonly attributes: Readonly<Record<string, string | number>>
  readonly children: readonly (DrawingNode | string)[]
}

/** The numbers behind a picture, for screen readers, print and copying. Units stand in the column's label. */
export interface PictureTable {
  readonly caption: string
  readonly columns: readonly { readonly key: string; readonly label: string; readonly numeric: boolean }[]
  readonly rows: readonly Readonly<Record<string, string>>[]
}

/** A finished picture: never shown without its title, its description and its table. */
export interface Picture {
  readonly title: string
  /** One or two sentences that say what the picture shows, with the numbers that matter. */
  readonly description: string
  readonly widthPx: number
  readonly heightPx: number
  readonly nodes: readonly DrawingNode[]
  readonly table: PictureTable
}

export function makeNode(
  tag: string,
  attributes: Readonly<Record<string, string | number | null | undefined>>,
  children: readonly (DrawingNode | string)[] = [],
): DrawingNode {
  const kept: Record<string, string | number> = {}
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== null && value !== undefined) kept[name] = typeof value === 'number' ? roundPx(value) : value
  }
  return { tag, attributes: kept, children }
}

/** A hundredth of a pixel is finer than any screen or printer resolves, and keeps files small and reproducible. */
export function roundPx(value: number): number {
  return Math.round(value * 100) / 100
}

/**
 * SVG text of a picture, readable by browsers and by PDF writers: inline attributes only, no classes, no style sheet.
 *
 * @param picture  drawn with a palette that suits the place: CSS variables work in a page only
 * @param unit  of the picture's own measures; a picture in mm prints at its true size
 */
export function toSvg(picture: Picture, unit: 'px' | 'mm' = 'px'): string {
  const { widthPx, heightPx } = picture
  const root = makeNode(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: unit === 'mm' ? `${roundPx(widthPx)}mm` : widthPx,
      height: unit === 'mm' ? `${roundPx(heightPx)}mm` : heightPx,
      viewBox: `0 0 ${roundPx(widthPx)} ${roundPx(heightPx)}`,
      role: 'img',
    },
    [makeNode('title', {}, [picture.title]), makeNode('desc', {}, [picture.description]), ...picture.nodes],
  )
  return serialize(root)
}

function serialize(node: DrawingNode | string): string {
  if (typeof node === 'string') return escapeXml(node)
  let attributes = ''
  for (const [name, value] of Object.entries(node.attributes)) {
    attributes += ` ${name}="${escapeXml(String(value)).replaceAll('"', '&quot;')}"`
  }
  if (node.children.length === 0) return `<${node.tag}${attributes}/>`
  return `<${node.tag}${attributes}>${node.children.map(serialize).join('')}</${node.tag}>`
}

function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}

/** What stands for the picture where it is not seen. */
export const describePicture = ({ title, description }: Picture): string => `${title}. ${description}`

import { createElement, type ReactNode } from 'react'
import type { DrawingNode } from '@/lib/drawing'

/** The nodes of a picture as React elements, for inside an `svg`. */
export function toElements(nodes: readonly DrawingNode[]): ReactNode {
  return nodes.map((node, index) => toElement(node, index))
}

function toElement(node: DrawingNode | string, key: number): ReactNode {
  if (typeof node === 'string') return node
  const properties: Record<string, string | number> = { key }
  for (const [name, value] of Object.entries(node.attributes)) properties[toPropertyName(name)] = value
  return createElement(node.tag, properties, ...node.children.map(toElement))
}

/** React writes SVG's hyphenated attributes in camel case. */
function toPropertyName(name: string): string {
  if (name === 'xlink:href') return 'href'
  return name.replace(/-([a-z])/g, (_match, letter: string) => letter.toUpperCase())
}

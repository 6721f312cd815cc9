/** A DXF as text out of groups: `[code, value]` one after another. */
export type Groups = readonly (readonly [number, string | number])[]

export const text = (groups: Groups): string => groups.map(([code, value]) => `${code}\n${value}\n`).join('')

export const bytes = (file: string): Uint8Array => new TextEncoder().encode(file)

interface Parts {
  readonly header?: Groups
  readonly layers?: Groups
  readonly blocks?: Groups
  readonly entities: Groups
}

export const MM: Groups = [
  [9, '$INSUNITS'],
  [70, 4],
]

export function dxf({ header = MM, layers = [], blocks = [], entities }: Parts): string {
  const section = (name: string, groups: Groups): Groups => [[0, 'SECTION'], [2, name], ...groups, [0, 'ENDSEC']]
  return text([
    ...section('HEADER', header),
    ...section('TABLES', [[0, 'TABLE'], [2, 'LAYER'], ...layers, [0, 'ENDTAB']]),
    ...section('BLOCKS', blocks),
    ...section('ENTITIES', entities),
    [0, 'EOF'],
  ])
}

export const line = (x1: number, y1: number, x2: number, y2: number, layer = 'A'): Groups => [
  [0, 'LINE'],
  [8, layer],
  [10, x1],
  [20, y1],
  [11, x2],
  [21, y2],
]

import { chainStrokes, drawDxf, drawSvg, readDxf, readSvg } from '@/lib/drawing-files'
import { dxf, type Groups, line } from './dxf-text'

/** Small numbers out of a seed (mulberry32, public domain). */
export function makeRandom(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

const WORDS = [
  '0',
  '2',
  '8',
  '10',
  '20',
  '11',
  '21',
  '40',
  '41',
  '42',
  '50',
  '51',
  '70',
  '71',
  '44',
  '45',
  '67',
  '90',
  '210',
  '230',
  '999',
  '62',
  'SECTION',
  'ENDSEC',
  'ENTITIES',
  'BLOCKS',
  'HEADER',
  'TABLES',
  'LAYER',
  'EOF',
  'LINE',
  'ARC',
  'CIRCLE',
  'LWPOLYLINE',
  'POLYLINE',
  'VERTEX',
  'SEQEND',
  'SPLINE',
  'ELLIPSE',
  'INSERT',
  'BLOCK',
  'ENDBLK',
  'POINT',
  'A',
  'B',
  '1',
  '-1',
  '0.5',
  '1e308',
  '-1e-308',
  'nan',
  '',
  '3',
  '7',
  '1e6',
  '100',
  '-90',
  '$INSUNITS',
  '4',
] as const

/** A file made of the words of the format, or a good one with bytes changed, dropped and doubled. */
export function makeFuzzedFile(random: () => number, good: string): Uint8Array {
  if (random() < 0.4) {
    const count = Math.floor(random() * 120)
    const lines = Array.from({ length: count }, () => WORDS[Math.floor(random() * WORDS.length)])
    return new TextEncoder().encode(`0\nSECTION\n2\n${random() < 0.8 ? 'ENTITIES' : 'BLOCKS'}\n${lines.join('\n')}`)
  }
  const lines = good.split('\n')
  const changes = 1 + Math.floor(random() * 6)
  for (let change = 0; change < changes; change += 1) {
    const at = Math.floor(random() * lines.length)
    const kind = random()
    if (kind < 0.5) lines[at] = WORDS[Math.floor(random() * WORDS.length)] ?? ''
    else if (kind < 0.7) lines.splice(at, 1 + Math.floor(random() * 3))
    else if (kind < 0.9) lines.splice(at, 0, ...lines.slice(at, at + Math.floor(random() * 20)))
    else lines.length = at
  }
  const bytes = new TextEncoder().encode(lines.join('\n'))
  if (random() < 0.2) bytes[Math.floor(random() * bytes.length)] = Math.floor(random() * 256)
  return bytes
}

/** Everything that is done with a file from outside; how many pieces came out of it. */
export function readFuzzed(bytes: Uint8Array): number {
  const read = readDxf(bytes)
  if (read.ok) {
    const drawing = drawDxf(read.file, 1, 0.01)
    return chainStrokes(drawing.strokes, 0.01).chains.reduce((sum, { pieces }) => sum + pieces.length, 0)
  }
  const svg = readSvg(bytes)
  return svg.ok ? drawSvg(svg.file, 1, 0.01).strokes.length : 0
}

export const GOOD_SVG =
  '<svg width="10mm"\nviewBox="0 0 10 10">\n<g\nid="a"\ntransform="scale(2) rotate(10 1 2)">\n<path\nd="M1 2\nC3 4 5 6 7 8\na1 1 0 0110 5\nq1 1 2 2\nt1 1z"/>\n<rect\nwidth="5"\nheight="4"\nrx="1"/>\n</g>\n</svg>'

const GOOD_ENTITIES: Groups = [
  ...line(0, 0, 10, 0),
  [0, 'LWPOLYLINE'],
  [8, 'A'],
  [70, 1],
  [10, 0],
  [20, 0],
  [42, 0.5],
  [10, 4],
  [20, 0],
  [10, 4],
  [20, 4],
  [0, 'SPLINE'],
  [8, 'A'],
  [71, 2],
  [40, 0],
  [40, 0],
  [40, 0],
  [40, 1],
  [40, 1],
  [40, 1],
  [10, 0],
  [20, 0],
  [10, 1],
  [20, 1],
  [10, 2],
  [20, 0],
  [0, 'ELLIPSE'],
  [8, 'A'],
  [10, 0],
  [20, 0],
  [11, 3],
  [21, 0],
  [40, 0.5],
  [41, 0],
  [42, 3],
  [0, 'INSERT'],
  [8, 'A'],
  [2, 'B'],
  [10, 1],
  [20, 1],
  [41, 2],
  [42, -1],
  [70, 3],
  [71, 3],
  [44, 5],
  [45, 5],
]

export const GOOD_DXF = dxf({
  blocks: [[0, 'BLOCK'], [2, 'B'], [10, 0], [20, 0], ...line(0, 0, 1, 0), [0, 'ENDBLK']],
  entities: GOOD_ENTITIES,
})

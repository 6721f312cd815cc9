/** Numbers from 0 to 1 that are the same for the same seed (mulberry32, public domain). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let value = Math.imul(state ^ (state >>> 15), 1 | state)
    value = (value + Math.imul(value ^ (value >>> 7), 61 | value)) ^ value
    return ((value ^ (value >>> 14)) >>> 0) / 4294967296
  }
}

/** What readers trip over, put in anywhere. */
const PIECES = [
  '%',
  '*',
  '\n',
  'X',
  'Y-',
  'D01*',
  'D03*',
  'G36*',
  'G37*',
  'G02*',
  '%SRX99Y99I1J1*%',
  '%ABD20*%',
  '%AB*%',
  '999999999',
  '0',
  '-',
  '.',
  '$1',
  '((',
  'M30',
  'R9999X1',
  '<a>',
  '</Polygon>',
  '"',
  '{',
  '[',
  '999',
  '\u00e9',
  '\u0000',
]

/** A few changes to a file: bytes flipped, cut out, doubled, or pieces of formats put in. */
export function mutate(bytes: Uint8Array, random: () => number): Uint8Array {
  const below = (limit: number) => Math.floor(random() * limit)
  let changed = [...bytes]
  for (let change = 0; change <= below(6); change += 1) {
    const at = below(changed.length + 1)
    const length = below(Math.min(40, changed.length - at + 1))
    const kind = below(4)
    if (kind === 0) changed[at] = below(256)
    else if (kind === 1) changed.splice(at, length)
    else if (kind === 2) changed.splice(at, 0, ...changed.slice(at, at + length))
    else {
      const piece = new TextEncoder().encode(PIECES[below(PIECES.length)] ?? '')
      changed = [...changed.slice(0, at), ...piece, ...changed.slice(at)]
    }
  }
  return Uint8Array.from(changed.map((byte) => byte ?? 0))
}

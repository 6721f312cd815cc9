import { type Affine, IDENTITY, product, scaleBy, shiftBy, turnBy } from '../curves'

const CALL = /[\s,]*(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^)]*)\)/y

/** A `transform` attribute (SVG 2, CSS Transforms 1; from memory); null where it cannot be read. */
export function readTransform(text: string | null): Affine | null {
  if (text === null) return IDENTITY
  let found = IDENTITY
  CALL.lastIndex = 0
  let end = 0
  while (end < text.trimEnd().length) {
    const match = CALL.exec(text)
    if (match === null) return null
    end = CALL.lastIndex
    const numbers = (match[2] ?? '')
      .split(/[\s,]+/)
      .filter((part) => part !== '')
      .map(Number)
    const one = numbers.every(Number.isFinite) ? makeTransform(match[1] ?? '', numbers) : null
    if (one === null) return null
    found = product(found, one)
  }
  return found
}

function makeTransform(name: string, n: readonly number[]): Affine | null {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = n
  const tangent = Math.tan((a * Math.PI) / 180)
  switch (name) {
    case 'matrix':
      return n.length === 6 ? { a, b, c, d, e, f } : null
    case 'translate':
      return n.length === 1 || n.length === 2 ? shiftBy([a, b]) : null
    case 'scale':
      return n.length === 1 ? scaleBy(a, a) : n.length === 2 ? scaleBy(a, b) : null
    case 'rotate':
      if (n.length === 1) return turnBy(a)
      return n.length === 3 ? product(shiftBy([b, c]), turnBy(a), shiftBy([-b, -c])) : null
    case 'skewX':
      return n.length === 1 ? { ...IDENTITY, c: tangent } : null
    default:
      return n.length === 1 ? { ...IDENTITY, b: tangent } : null
  }
}

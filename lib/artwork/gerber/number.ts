const [DOT, PLUS, MINUS, ZERO, NINE] = [0x2e, 0x2b, 0x2d, 0x30, 0x39]
const POWERS = Array.from({ length: 20 }, (_, at) => 10 ** at)

/** @param exponent  a whole number from 0 */
export const powerOfTen = (exponent: number): number => POWERS[exponent] ?? 10 ** exponent

/** The number that was read last. A file has millions: it is kept here rather than returned as an object. */
export class GerberNumber {
  /** What its digits say; with a point among them the decimals are counted in. */
  value = 0
  digits = 0
  hasPoint = false

  /** Reads sign, digits and point; returns where it ends. Line ends inside a number are passed over, as some files break their lines anywhere. */
  read(bytes: Uint8Array, from: number, end: number): number {
    let at = from
    let value = 0
    let digits = 0
    let decimals = -1
    let isNegative = false
    const first = bytes[at]
    if (at < end && (first === PLUS || first === MINUS)) {
      isNegative = first === MINUS
      at += 1
    }
    for (; at < end; at += 1) {
      const byte = bytes[at] ?? 0
      if (byte >= ZERO && byte <= NINE) {
        value = value * 10 + (byte - ZERO)
        digits += 1
        if (decimals >= 0) decimals += 1
      } else if (byte === DOT && decimals < 0) decimals = 0
      else if (byte !== 0x0a && byte !== 0x0d) break
    }
    if (digits === 0) return from
    this.hasPoint = decimals >= 0
    if (decimals > 0) value /= powerOfTen(Math.min(decimals, 19))
    this.value = isNegative ? -value : value
    this.digits = digits
    return at
  }
}

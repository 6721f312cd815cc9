const STAR = 0x2a
const PERCENT = 0x25
const NEWLINE = 0x0a
const RETURN = 0x0d
const SPACE = 0x20

/** `G04` and `G4`: a comment, in which a percent sign means nothing. */
function beginsComment(bytes: Uint8Array, at: number): boolean {
  if (bytes[at] !== 0x47) return false
  const next = bytes[at + 1] === 0x30 ? at + 2 : at + 1
  const after = bytes[next + 1] ?? STAR
  return bytes[next] === 0x34 && !(after >= 0x30 && after <= 0x39)
}

/**
 * Cuts a Gerber file into words: what stands before a `*` (Gerber Layer Format Specification, "command structure"). Fields tell of the present word; nothing is made
 * for each, as files have millions.
 */
export class GerberWords {
  start = 0
  /** Behind the word's last byte. */
  end = 0
  line = 1
  column = 1
  /** Whether the word stands between percent signs. */
  isExtended = false
  /** Which pair of percent signs it stands in: words of one statement share the number. */
  statement = 0
  /** Whether its `*` is missing. */
  isUnended = false
  #at = 0
  #line = 1
  #lineStart = 0

  constructor(readonly bytes: Uint8Array) {
    // A byte order mark is no part of the file's first word.
    if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) this.#at = 3
  }

  /** Goes on to the next word; false at the file's end. */
  next(): boolean {
    const { bytes } = this
    const length = bytes.length
    let at = this.#at
    while (at < length) {
      const byte = bytes[at]
      if (byte === NEWLINE) {
        this.#line += 1
        this.#lineStart = at + 1
      } else if (byte === PERCENT) {
        this.isExtended = !this.isExtended
        this.statement += 1
      } else if (byte !== RETURN && byte !== SPACE && byte !== STAR && byte !== 0x09 && byte !== 0) break
      at += 1
    }
    this.start = at
    this.line = this.#line
    this.column = at - this.#lineStart + 1
    if (at >= length) {
      this.#at = at
      return false
    }
    const isComment = beginsComment(bytes, at)
    while (at < length) {
      const byte = bytes[at]
      if (byte === STAR || (byte === PERCENT && !isComment)) break
      if (byte === NEWLINE) {
        this.#line += 1
        this.#lineStart = at + 1
      }
      at += 1
    }
    this.end = at
    this.isUnended = bytes[at] !== STAR
    this.#at = this.isUnended ? at : at + 1
    return true
  }

  /** The word without line ends. Bytes that are not UTF-8 become the sign that stands for one. */
  text(): string {
    const text = UTF8.decode(this.bytes.subarray(this.start, this.end))
    return text.includes('\n') || text.includes('\r') ? text.replace(/[\r\n]+/g, '') : text
  }
}

const UTF8 = new TextDecoder('utf-8')

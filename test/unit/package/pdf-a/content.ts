/** One operator of a content stream with what stands before it (ISO 32000-1:2008, 7.8.2). */
export interface Operation {
  readonly operator: string
  /** As written: numbers, names with their slash, strings in angle brackets or parentheses, arrays and dictionaries as their parts. */
  readonly operands: readonly string[]
}

const TOKEN =
  /%[^\r\n]*|\((?:\\[\s\S]|[^\\()]|\((?:\\[\s\S]|[^\\()])*\))*\)|<<|>>|<[^<>]*>|\[|\]|\/[^\s()<>[\]{}/%]*|[^\s()<>[\]{}/%]+/g

/** Reads what our writer writes: no inline images, strings nested once at most. */
export function readOperations(bytes: Uint8Array): Operation[] {
  const text = new TextDecoder('latin1').decode(bytes)
  const operations: Operation[] = []
  let operands: string[] = []
  for (const [token] of text.matchAll(TOKEN)) {
    if (token.startsWith('%')) continue
    if (/^[a-zA-Z'"][a-zA-Z0-9*]*$/.test(token) && !/^(true|false|null)$/.test(token)) {
      operations.push({ operator: token, operands })
      operands = []
    } else operands.push(token)
  }
  return operations
}

/** Characters of a font of two-byte codes, from the operands of a text operator. */
export function readCodes(operands: readonly string[]): number[] {
  return operands
    .filter((operand) => /^<[0-9a-f]*>$/i.test(operand))
    .flatMap((hex) => (hex.slice(1, -1).match(/.{4}/g) ?? []).map((code) => Number.parseInt(code, 16)))
}

import * as asn1js from 'asn1js'

/** What a structure in DER cannot be read by: shown to people. */
export class Misread extends Error {}

export const fail = (message: string): never => {
  throw new Misread(message)
}

export function parse(bytes: Uint8Array): asn1js.BaseBlock {
  const { offset, result } = asn1js.fromBER(new Uint8Array(bytes).buffer)
  return offset === -1 ? fail('it is not DER') : result
}

export function partsOf(block: asn1js.BaseBlock | undefined): asn1js.BaseBlock[] {
  const list = (block as asn1js.Constructed | undefined)?.valueBlock.value
  return Array.isArray(list) ? (list as asn1js.BaseBlock[]) : fail('a part of it is missing')
}

export const identifierOf = (block: asn1js.BaseBlock | undefined): string =>
  block instanceof asn1js.ObjectIdentifier ? block.valueBlock.toString() : fail('a part of it has no name')

export const integerOf = (block: asn1js.BaseBlock | undefined): number =>
  block instanceof asn1js.Integer ? block.valueBlock.valueDec : fail('a part of it is not a number')

/** Of an octet string in one piece, or in several. */
export const octetsOf = (block: asn1js.BaseBlock | undefined): Buffer =>
  block instanceof asn1js.OctetString ? Buffer.from(block.getValue()) : fail('a part of it is not an octet string')

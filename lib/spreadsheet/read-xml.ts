import { Parser } from 'saxen'

/** Namespaces of Office Open XML (ECMA-376), both as first published and as in its strict form, under short names. */
const NAMESPACES = {
  'http://schemas.openxmlformats.org/spreadsheetml/2006/main': 's',
  'http://purl.oclc.org/ooxml/spreadsheetml/main': 's',
  'http://schemas.openxmlformats.org/officeDocument/2006/relationships': 'r',
  'http://purl.oclc.org/ooxml/officeDocument/relationships': 'r',
  'http://schemas.openxmlformats.org/package/2006/relationships': 'p',
} as const

export interface XmlHandlers {
  readonly open?: (name: string, attribute: (name: string) => string | null) => void
  readonly close?: (name: string) => void
  readonly text?: (text: string) => void
}

/**
 * Walks an XML part. Document type declarations are refused: a spreadsheet has none, and entities that expand come in one.
 * @throws Error for what is not well-formed
 */
export function readXml(xml: string, { open, close, text }: XmlHandlers): void {
  let problem: Error | null = null
  const parser = new Parser()
    .ns(NAMESPACES)
    .on('openTag', (name, attributes, decode) => {
      open?.(name, (wanted) => {
        const value = attributes()[wanted]
        return value === undefined ? null : decode(value)
      })
    })
    .on('closeTag', (name) => close?.(name))
    .on('text', (part, decode) => text?.(decode(part)))
    .on('cdata', (part) => text?.(part))
    .on('attention', (part) => {
      if (/^<!DOCTYPE/i.test(part)) problem ??= new Error('it has a document type declaration')
    })
    .on('error', (error) => {
      problem ??= error
    })
  parser.parse(xml)
  if (problem !== null) throw problem
}

/** What is used of the parser, which brings no types of its own. */
declare module 'saxen' {
  export type Decode = (text: string) => string
  /** Where the parser is, from 0. It is counted from the file's beginning each time: for what has to be said. */
  export type GetContext = () => { readonly line: number; readonly column: number }
  export class Parser {
    ns(prefixes?: Readonly<Record<string, string>>): this
    on(
      event: 'openTag',
      handle: (
        name: string,
        attributes: () => Readonly<Record<string, string>>,
        decode: Decode,
        selfClosing: boolean,
        getContext: GetContext,
      ) => void,
    ): this
    on(event: 'closeTag', handle: (name: string, decode: Decode, selfClosing: boolean) => void): this
    on(event: 'text', handle: (text: string, decode: Decode) => void): this
    on(event: 'cdata', handle: (text: string) => void): this
    on(event: 'error', handle: (error: Error, getContext: GetContext) => void): this
    on(event: 'attention', handle: (text: string, decode: Decode, getContext: GetContext) => void): this
    parse(xml: string): void
  }
}

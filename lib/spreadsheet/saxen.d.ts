/** What is used of the parser, which brings no types of its own. */
declare module 'saxen' {
  export type Decode = (text: string) => string
  export class Parser {
    ns(prefixes?: Readonly<Record<string, string>>): this
    on(
      event: 'openTag',
      handle: (
        name: string,
        attributes: () => Readonly<Record<string, string>>,
        decode: Decode,
        selfClosing: boolean,
      ) => void,
    ): this
    on(event: 'closeTag', handle: (name: string, decode: Decode, selfClosing: boolean) => void): this
    on(event: 'text', handle: (text: string, decode: Decode) => void): this
    on(event: 'cdata', handle: (text: string) => void): this
    on(event: 'error', handle: (error: Error) => void): this
    on(event: 'attention', handle: (text: string) => void): this
    parse(xml: string): void
  }
}

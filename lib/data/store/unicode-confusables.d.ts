/** The package names a file of declarations that it does not contain. */
declare module 'unicode-confusables' {
  /** Each letter as the plain one that it looks like (Unicode Technical Standard 39). */
  export function rectifyConfusion(input: string): string
}

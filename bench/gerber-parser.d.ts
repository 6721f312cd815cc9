/** What the comparison uses of these packages, which bring no types of their own. */
declare module 'gerber-parser' {
  import type { Transform } from 'node:stream'

  export default function gerberParser(options: { readonly filetype: 'gerber' }): Transform
}
declare module 'gerber-plotter' {
  import type { Transform } from 'node:stream'

  export default function gerberPlotter(): Transform
}

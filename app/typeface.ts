import localFont from 'next/font/local'

/**
 * Source Sans 3 (SIL Open Font License 1.1; licence and files lie in the `source-sans` package): figures of one width by
 * default, and the signs of the trade (µ ° Ω × ± ⁶). The report and the drawing sheets embed the same family. The loader
 * serves the files from this server and gives the fallback the same widths, so that nothing moves when they arrive.
 */
export const shippedFont = localFont({
  src: [
    {
      path: '../node_modules/source-sans/WOFF2/VF/SourceSans3VF-Upright.ttf.woff2',
      weight: '200 900',
      style: 'normal',
    },
    { path: '../node_modules/source-sans/WOFF2/VF/SourceSans3VF-Italic.ttf.woff2', weight: '200 900', style: 'italic' },
  ],
  variable: '--font-shipped',
  display: 'swap',
  adjustFontFallback: 'Arial',
})

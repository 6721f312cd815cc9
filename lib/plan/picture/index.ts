/** Plans as pictures: paths in the words of SVG. */
export { pathData } from './path-data'

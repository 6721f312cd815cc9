export { PictureTableView } from './picture-table-view'
export { PictureView } from './picture-view'
export { usePlotDocument } from './use-plot-document'
export { useWidth } from './use-width'

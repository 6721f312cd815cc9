/** Artwork as it is looked at: layers as one compact file, what of them is worth drawing in a view, and the view itself. Nothing is judged here. */

export { type Chosen, choosePaths } from './choose'
export { type DrawnLayer, type LayerHead, type LayerToDraw, readPicture, UNIT_NM, writePicture } from './format'
export { boxOfLayers, colourOf, inOrderOfPaint, isSeenFirst, LAYER_COLOURS, type LayerColour } from './layers'
export { PICTURE_VERSION } from './version'
export {
  type BoxMm,
  fitBox,
  type PointMm,
  panBy,
  pixelOf,
  placeOf,
  type SizePx,
  turnOver,
  type View,
  viewAt,
  windowOf,
  zoomBy,
} from './view'

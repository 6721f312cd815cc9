export { ArtworkPicture } from './artwork-picture'
export { listArtworkFindings } from './list-findings'
export { planShapesOf } from './plan-shapes'

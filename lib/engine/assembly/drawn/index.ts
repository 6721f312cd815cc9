export { drawDimensions } from './draw-dimensions'

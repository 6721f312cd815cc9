export { drawCostOverQuantity, drawCostShares, type QuantityPoint } from './cost-plots'
export {
  type CrossSectionOptions,
  drawCrossSection,
} from './cross-section'
export { formatDesignation, type LayerDesignation, nameConductorLayers } from './layer-designations'
export { listLayerTable } from './layer-table'
export { drawLifePlot } from './life-plot'
export { drawOutline } from './outline-picture'
export { type Palette, PRINT_PALETTE, SCREEN_PALETTE } from './palette'
export { drawPanel, type PanelPictureOptions } from './panel-picture'
export { drawPartSection, type PartSectionOptions } from './part-section'
export { type DrawingNode, type Picture, type PictureTable, toSvg } from './picture'
export type { PlotFrame } from './plot-picture'
export { makeProductMarkSvg, PRODUCT_MARK_PATHS, PRODUCT_MARK_SIZE } from './product-mark'
export {
  drawRemedyPlot,
  getEffectWord,
  listRemedyRows,
  REMEDY_EFFECTS,
  type RemedyEffect,
  type RemedyPlotOptions,
} from './remedy-plot'
export * from './sheet'
export { drawStrainPlot, listStrainRows, type StrainPlotOptions } from './strain-plot'
export { drawThicknessHistogram, type ThicknessHistogramOptions } from './thickness-histogram'
export {
  drawTornadoPlot,
  type TornadoMeasure,
  type TornadoPlotOptions,
} from './tornado-plot'

/**
 * Tables of text out of CSV and XLSX files and into them. Nothing in a file is ever evaluated. Pure: it runs where there
 * is neither a file system nor a network.
 */
export { GRID_LIMITS, nameColumn } from './cell'
export { readCsv, writeCsv } from './csv'
export { readXlsx } from './read-xlsx'

export { writeWorkbook, writeXlsx } from './write-xlsx'

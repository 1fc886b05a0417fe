export { canvasPattern } from './canvas/canvas-pattern.ts';
export { type PaintContext, paintNodes, paintScene } from './canvas/paint-scene.ts';
export { colourOf, type InkRole, type Look, type LookName, looks } from './looks.ts';
export { type PatternMark, type PatternTile, patternInk, patternTiles } from './patterns.ts';
export { type EmbeddedFont, type SvgOptions, sceneToSvg } from './svg/scene-to-svg.ts';

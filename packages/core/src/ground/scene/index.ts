export { type Box, groupNode, lineNode, type TextLook, textBox, textNode, textsOf } from './nodes.ts';
export { type Paper, type PaperName, papers, pointsPerMillimetre, type SheetName, sheets } from './paper.ts';
export type {
  Fill,
  FontWeight,
  GroupNode,
  Ink,
  LineNode,
  PathNode,
  RectNode,
  Scene,
  SceneNode,
  Stroke,
  TextNode,
} from './scene.ts';
export { fitText, fontAscent, fontCovers, fontDescent, textWidth, wrapText } from './text-width.ts';

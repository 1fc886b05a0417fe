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

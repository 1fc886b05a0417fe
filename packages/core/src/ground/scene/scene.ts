import type { Pattern } from '../tables/index.ts';

/**
 * A drawing as plain data, from which every painter (SVG, PDF, Canvas) paints the same picture.
 * Lengths are in paper units: points (1/72 inch) on a page, CSS pixels on a screen. y grows downwards.
 */
export interface Scene {
  readonly width: number;
  readonly height: number;
  /** The title a reader hears first. */
  readonly title: string;
  /** What the drawing says, in words, for those who cannot see it. */
  readonly description: string;
  readonly nodes: readonly SceneNode[];
}

export type SceneNode = RectNode | LineNode | PathNode | TextNode | GroupNode;

/** Ink by role, so that a light, a dark and a printed look share one scene; a motion colour is the motion's own. */
export type Ink =
  | 'ink'
  | 'soft'
  | 'faint'
  | 'rule'
  | 'paper'
  | 'shade'
  | 'accent'
  | 'warn'
  | { readonly colour: string };

export interface Fill {
  readonly ink: Ink;
  /** Print pattern laid over the fill so that it reads in black and white. */
  readonly pattern?: Pattern;
  readonly opacity?: number;
}

export interface Stroke {
  readonly ink: Ink;
  readonly width: number;
  readonly dash?: readonly number[];
}

export interface RectNode {
  readonly kind: 'rect';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly radius?: number;
  readonly fill?: Fill;
  readonly stroke?: Stroke;
}

export interface LineNode {
  readonly kind: 'line';
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly stroke: Stroke;
}

/** A path in absolute SVG path commands M, L, C, A and Z. */
export interface PathNode {
  readonly kind: 'path';
  readonly d: string;
  readonly fill?: Fill;
  readonly stroke?: Stroke;
}

export type FontWeight = 400 | 600;

/** One line of text on its baseline. Its width is known from the font's own figures (`textWidth`). */
export interface TextNode {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly weight: FontWeight;
  readonly align: 'start' | 'middle' | 'end';
  readonly ink: Ink;
  readonly italic?: boolean;
}

/**
 * Nodes that belong together; `role` says what they are to someone who hears the drawing.
 * A `table` holds rows, the first of which may be a `head-row`; a row holds cells, one for each column.
 * A `layer` is drawing only: nothing in it is read out. Texts are read in the order in which they stand.
 */
export interface GroupNode {
  readonly kind: 'group';
  readonly role: 'heading' | 'table' | 'head-row' | 'row' | 'cell' | 'figure' | 'note' | 'layer';
  readonly label?: string;
  /** Of a heading: 1 for the title of the sheet (the usual), 2 for a part of it. */
  readonly level?: 1 | 2;
  readonly nodes: readonly SceneNode[];
}
